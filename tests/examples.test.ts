import { basename, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { filesIn, root, textOf } from './files.ts'

interface Example {
  file: string
  call: string
  result: string
}

const examples: Example[] = filesIn('shared').flatMap((file) =>
  [...textOf(file).matchAll(/@example (.+?) \/\/ (.+?)(?: \*\/)?$/gm)].map(([, call, result]) => ({
    file,
    call: call!,
    result: result!,
  })),
)

const rounded = (value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(9)) : Array.isArray(value) ? value.map(rounded) : value

describe('every example in the core', () => {
  it('is found', () => {
    expect(examples.length).toBeGreaterThan(5)
  })

  it.each(examples)('$file: $call gives $result', async ({ file, call, result }) => {
    const exports = (await import(pathToFileURL(join(root, file)).href)) as Record<string, unknown>
    const names = Object.keys(exports)
    const run = (code: string): unknown =>
      // oxlint-disable-next-line typescript/no-implied-eval -- running the examples is what this test is for
      new Function(...names, `return (${code})`)(...names.map((n) => exports[n]))
    expect(rounded(run(call)), basename(file)).toEqual(rounded(run(result)))
  })
})
