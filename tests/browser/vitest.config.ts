import { defineConfig } from 'vitest/config'

// Two browsers and two servers at a time at most: the machine that runs these may be small.
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 60_000,
    // A page may have to be fetched, started and drawn first, beside another browser.
    expect: { poll: { timeout: 10_000 } },
    maxWorkers: 2,
  },
})
