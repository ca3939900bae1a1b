import { describe, expect, it } from 'vitest'
import { filesIn, textOf } from '../files.ts'
import { checks, woodChecks } from './rows.ts'

const tests = filesIn('tests/reference', '.test.ts')
  .filter((f) => !f.endsWith('coverage.test.ts'))
  .map(textOf)
  .join('\n')
const outOfScope = Object.assign(
  {},
  ...filesIn('tests/reference/out-of-scope', '.json').map(
    (f) => JSON.parse(textOf(f)) as Record<string, string>,
  ),
) as Record<string, string>
const quoted = new Set([...tests.matchAll(/['"`]([\w-]+)['"`]/g)].map(([, word]) => word!))
const prefixes = [...tests.matchAll(/woodRows\(['"`]([\w-]+)['"`]\)/g)].map(([, prefix]) => prefix!)
const answered = (id: string): boolean => quoted.has(id) || prefixes.some((prefix) => id.startsWith(prefix))

describe('the published values', () => {
  const ids = [...checks, ...woodChecks].map((r) => r.id)

  it('are each tested, or listed as out of scope with the reason', () => {
    expect(ids.filter((id) => !answered(id) && !outOfScope[id])).toEqual([])
  })

  it('are never both tested and listed as out of scope', () => {
    expect(ids.filter((id) => answered(id) && outOfScope[id])).toEqual([])
  })

  it('are listed as out of scope only where they exist, with a real reason', () => {
    expect(Object.keys(outOfScope).filter((id) => !ids.includes(id))).toEqual([])
    expect(Object.entries(outOfScope).filter(([, reason]) => reason.length < 15)).toEqual([])
  })

  it('have ids that are used once', () => {
    expect(new Set(ids).size).toBe(ids.length)
  })
})
