import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asJson, safely, shownPlainly } from '../../../server/cli/output.ts'

/** What comes through a speech made safe. */
function said(text: string): { out: string; err: string } {
  const heard = { out: '', err: '' }
  const speech = safely({
    out: (part) => {
      heard.out += part
    },
    err: (part) => {
      heard.err += part
    },
  })
  speech.out(text)
  speech.err(text)
  return heard
}

/** By the character database: controls, and the marks that embed, override or isolate a direction. */
const steers = /[\p{Cc}\u202a-\u202e\u2066-\u2069]/u

describe('what is said', () => {
  it('writes controls of names out instead of sending them to the terminal', () => {
    expect(shownPlainly('leg\u001b[31m\u0007')).toBe('leg\\u001b[31m\\u0007')
    expect(shownPlainly('a\nb\tc\u009b\u007f')).toBe('a\\nb\\tc\\u009b\\u007f')
    expect(shownPlainly('\u202egel\u2069')).toBe('\\u202egel\\u2069')
  })

  it('leaves names in every script as they are', () => {
    for (const name of ['Åse’s legs, ½″', 'רגל', 'ножка', '椅子の脚', '🪵👩‍🔧'])
      expect(shownPlainly(name)).toBe(name)
  })

  it('keeps nothing that steers but line ends, on both streams', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const { out, err } = said(text)
        expect(out.replaceAll('\n', '')).not.toMatch(steers)
        expect(err).toBe(out)
      }),
    )
  })

  it('keeps JSON the same JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.string({ unit: 'binary' }), (value, text) => {
        const whole = { value, text, [text]: `\u0085\u202e${text}` }
        expect(JSON.parse(said(asJson(whole)).out)).toEqual(JSON.parse(asJson(whole)))
      }),
    )
  })
})
