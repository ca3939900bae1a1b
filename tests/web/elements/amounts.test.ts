import { describe, expect, it } from 'vitest'
import { changeText } from '../../../web/elements/amounts.ts'

describe('a change', () => {
  it('carries its sign', () => {
    const text = (mm: number) => `${mm} mm`
    expect([changeText(2, text), changeText(-2, text)]).toEqual(['+2 mm', '−2 mm'])
  })
})
