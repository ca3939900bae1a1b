import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** The files that go over every page take longest: begun last, they would be waited for alone. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isLong = ({ moduleId }: TestSpecification) => moduleId.includes('pages')
    const sorted = await super.sort(files)
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))]
  }
}

// Two browsers and two servers at a time at most: the machine that runs these may be small.
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 60_000,
    // A page may have to be fetched, started and drawn first, beside another browser.
    expect: { poll: { timeout: 10_000 } },
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
  },
})
