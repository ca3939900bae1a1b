import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    testTimeout: 30_000,
    // Loading every module anew for each file would take longer than the tests; none of them changes a module.
    isolate: false,
    // Nothing else runs beside the tests: every core may take its share.
    maxWorkers: '100%',
  },
})
