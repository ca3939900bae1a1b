import { defineConfig } from 'vitest/config'

// One browser and one server at a time: the machine that runs these may be small.
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 60_000,
    fileParallelism: false,
  },
})
