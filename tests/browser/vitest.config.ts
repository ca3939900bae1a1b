import { defineConfig } from 'vitest/config'

// Two browsers and two servers at a time at most: the machine that runs these may be small.
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
  },
})
