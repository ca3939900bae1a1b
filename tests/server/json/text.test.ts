import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { textOf } from '../../../server/json/text.ts'
import { Problem } from '../../../shared/problem.ts'

function refusal(bytes: Uint8Array): string {
  try {
    textOf(bytes)
  } catch (error) {
    expect(error).toBeInstanceOf(Problem)
    return (error as Problem).errors[0]!.message
  }
  return 'was read'
}

const file = '{\n  "name": "Åse’s legs",\n  "customer": "Jürgen"\n}'

describe('textOf', () => {
  it('reads UTF-8, with or without a byte order mark', () => {
    expect(textOf(Buffer.from(file, 'utf8'))).toBe(file)
    expect(textOf(Buffer.from(`\ufeff${file}`, 'utf8'))).toBe(file)
  })

  it('reads whatever text is written as UTF-8, but for zeros between its letters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (text) => {
        expect(textOf(Buffer.from(`"${text}"`, 'utf8'))).toBe(`"${text}"`)
      }),
    )
  })

  it('refuses Latin-1, and says in which line', () => {
    expect(refusal(Buffer.from('{\n  "name": "legs",\n  "customer": "Jürgen"\n}', 'latin1'))).toMatch(
      /^is not UTF-8 text: line 3 /,
    )
    expect(refusal(Buffer.from([0xe9]))).toMatch(/^is not UTF-8 text: line 1 /)
  })

  it.each([
    ['a letter cut off at the end', [0x22, 0xc3]],
    ['a letter written longer than need be', [0x22, 0xc0, 0xaf, 0x22]],
    ['half of a pair', [0x22, 0xed, 0xa0, 0x80, 0x22]],
    ['a picture', [0x89, 0x50, 0x4e, 0x47, 0, 1, 2]],
  ])('refuses %s', (_, bytes) => {
    expect(refusal(Uint8Array.from(bytes))).toMatch(/^is not UTF-8 text: line 1 /)
  })

  it.each([
    ['little end first', (text: string) => Buffer.from(text, 'utf16le')],
    ['big end first', (text: string) => Buffer.from(text, 'utf16le').swap16()],
  ])('names UTF-16 as such, with or without its mark: %s', (_, written) => {
    for (const text of [file, `\ufeff${file}`, '{}', '7', '\ufeff'])
      expect(refusal(written(text))).toBe('is not UTF-8 text but UTF-16; save it as UTF-8')
  })

  it('leaves a zero inside a text to the reader of the text', () => {
    expect(textOf(Buffer.from('"a\0b"'))).toBe('"a\0b"')
    expect(textOf(new Uint8Array())).toBe('')
  })
})
