import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { scanMembers } from '../../../server/json/members.ts'

const paths = (text: string): string[] => scanMembers(text).twice.map(({ path }) => path)

describe('scanMembers', () => {
  it('names a field that is given twice, by its path and lines', () => {
    const text = '{\n "a": [1, {"b": [\n {"at": 0},\n {"at": 1,\n "d": 2,\n "at": 3}]}]\n}'
    expect(scanMembers(text).twice).toEqual([
      { path: 'a[1].b[1].at', message: 'is given twice, at lines 4 and 6; a field may be given once' },
    ])
    expect(scanMembers('{"a":1,"a":1}').twice[0]!.message).toContain('both at line 1')
  })

  it.each([
    ['fields of one name in different objects', '{"a": {"a": [{"a": 1}, {"a": 2}]}, "b": {"a": 3}}', []],
    ['values that read like names', '{"a": "b", "b": ["a", "a", "a:", "{\\"a\\":1"], "c": "a"}', []],
    ['a field after an inner object with the same', '{"a": {"b": 1}, "b": 2, "c": {"b": 3}, "b": 4}', ['b']],
    ['names written with and without escapes', '{"a": 1, "\\u0061": 2}', ['a']],
    ['quotes and slashes at the end of names', '{"a\\\\": 1, "a\\"": 2, "a\\\\": 3}', ['a\\']],
    ['an empty name', '{"": 1, "": 2}', ['']],
    [
      'names that objects have of their own',
      '{"__proto__": 1, "toString": 2, "__proto__": 3}',
      ['__proto__'],
    ],
    ['a field given three times', '{"a": 1, "a": 2, "a": 3}', ['a', 'a']],
    ['lists in lists', '[[{"a": 1}], [{"b": 1}, {"b": 1, "b": 2}]]', ['[1][1].b']],
  ])('tells %s rightly', (_, text, found) => {
    expect(paths(text)).toEqual(found)
  })

  it('finds nothing in what a value is written as, however it is spaced', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.nat(3), (value, space) => {
        expect(scanMembers(JSON.stringify(value, null, space))).toMatchObject({ tooDeep: false, twice: [] })
      }),
    )
  })

  it('finds as many as there are fields beyond the first of each name', () => {
    const name = fc.oneof(
      fc.constantFrom('a', 'b', 'ä', '"', '\\', '\\"', '\n'),
      fc.string({ unit: 'binary' }),
    )
    fc.assert(
      fc.property(fc.array(name, { maxLength: 30 }), (names) => {
        const text = `{${names.map((each) => `${JSON.stringify(each)}: [{"a": "a"}]`).join(', ')}}`
        expect(paths(text)).toHaveLength(names.length - new Set(names).size)
      }),
    )
  })

  it('tells no more than a person can use, and no name of megabytes', () => {
    expect(paths(`{${Array.from({ length: 1000 }, () => '"a": 1').join()}}`)).toHaveLength(50)
    const long = 'x'.repeat(1_000_000)
    expect(paths(`{"${long}": 1, "${long}": 2}`)[0]!.length).toBeLessThan(100)
  })

  it('takes 64 levels and no more', () => {
    const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth)
    expect(scanMembers(nested(64)).tooDeep).toBe(false)
    expect(scanMembers(nested(65)).tooDeep).toBe(true)
    expect(scanMembers(`[${nested(63)},${nested(63)}]`).tooDeep).toBe(false)
  })
})
