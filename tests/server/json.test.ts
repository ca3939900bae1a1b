import { describe, expect, it } from 'vitest'
import { readJson, readJsonBytes } from '../../server/json.ts'
import { Problem } from '../../shared/problem.ts'

function refusal(text: string): Problem {
  try {
    readJson(text)
  } catch (error) {
    if (error instanceof Problem) return error
    throw error
  }
  throw new Error('was read')
}

describe('readJson', () => {
  it('reads what JSON.parse reads', () => {
    const text = '{"a": [1, -2.5e3, "x\\u00e9\\"", true, null, {}], "b": []}'
    expect(readJson(text)).toEqual(JSON.parse(text))
  })

  it.each([
    ['{"quantity": NaN}', 1, 14, 'a value must stand there; read "NaN"'],
    ['{\n  "a": 1,\n}', 3, 1, 'a field name in double quotes must stand there'],
    ['[1, 2', 1, 6, 'a comma or ] must stand there; read the end of the input'],
    ["{'a': 1}", 1, 2, 'a field name in double quotes or } must stand there'],
    ['{"a" 1}', 1, 6, 'a colon must stand there; read "1"'],
    ['{"a": 01}', 1, 8, 'a comma or } must stand there'],
    ['{} {}', 1, 4, 'nothing more must stand there'],
    ['"open', 1, 6, 'the rest of a string'],
    ['["a\nb"]', 1, 4, 'the rest of a string'],
    ['["\\x"]', 1, 3, 'the rest of a string'],
    ['hello', 1, 1, 'a value must stand there; read "hello"'],
    ['[1,,2]', 1, 4, 'a value must stand there; read ","'],
    ['\ufeff{}', 1, 1, 'a value must stand there'],
  ])('says line and column of the fault in %j', (text, line, column, says) => {
    const { code, message, errors } = refusal(text)
    expect(code).toBe('not-json')
    expect(message).toContain(`line ${line}, column ${column}`)
    expect(errors[0]!.message).toContain(says)
  })

  it('finds a fault wherever a good text is cut off', () => {
    const text = '{"a": [1, {"b": "c\\n"}, null], "d": -0.5}'
    for (let end = 1; end < text.length; end++) {
      const { message } = refusal(text.slice(0, end))
      const column = Number(/line 1, column (\d+)/.exec(message)?.[1])
      // A word or an escape that is cut through is told from where it begins.
      expect(end + 1 - column, `${text.slice(0, end)}: ${message}`).toBeGreaterThanOrEqual(0)
      expect(end + 1 - column, `${text.slice(0, end)}: ${message}`).toBeLessThan('null'.length)
    }
  })

  it('says that nothing is there', () => {
    expect(refusal(' \n ').message).toContain('empty')
  })

  it('refuses what is nested beyond reason, however much of it there is', () => {
    const depth = 100_000
    const { code, message } = refusal('['.repeat(depth) + ']'.repeat(depth))
    expect(code).toBe('bad-input')
    expect(message).toContain('nested too deep')
    expect(refusal('{"a":'.repeat(1_000_000)).code).toBe('not-json')
  })

  it('does not take brackets in strings for nesting', () => {
    expect(readJson(JSON.stringify(['['.repeat(500)]))).toEqual(['['.repeat(500)])
  })

  it('reads a string of megabytes and finds a fault behind it', () => {
    const long = 'x'.repeat(4_000_000)
    expect(readJson(`["${long}"]`)).toEqual([long])
    expect(refusal(`["${long}", ]`).message).toContain(`column ${long.length + 6}`)
  })

  it('refuses a field given twice, for one of its values would be lost', () => {
    const { code, errors } = refusal('{"quantity": 8,\n"profile": {},\n"quantity": 9}')
    expect(code).toBe('bad-input')
    expect(errors).toEqual([{ path: 'quantity', message: expect.stringContaining('at lines 1 and 3') }])
  })

  it('gives no object a new nature', () => {
    const value = readJson('{"__proto__": {"quantity": 8}}') as Record<string, unknown>
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype)
    expect(value.quantity).toBeUndefined()
  })
})

describe('readJsonBytes', () => {
  it('reads UTF-8 with or without its mark, and nothing else', () => {
    const bytes = Buffer.from('{"name": "Åse"}')
    expect(readJsonBytes(bytes)).toEqual({ name: 'Åse' })
    expect(readJsonBytes(Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), bytes]))).toEqual({ name: 'Åse' })
    expect(() => readJsonBytes(Buffer.from('{"name": "Åse"}', 'latin1'))).toThrow(/not UTF-8 text/)
    expect(() => readJsonBytes(Buffer.from([0xef, 0xbb, 0xbf]))).toThrow(/empty/)
  })
})
