import { describe, expect, it } from 'vitest'
import { overText } from '../../../web/elements/record-card.ts'

describe('overText', () => {
  it.each([
    [100, 112, '12 % over'],
    [100, 88, '12 % under'],
    [100, 100.3, 'as planned'],
    [0, 5, ''],
  ])('%f planned, %f taken: “%s”', (planned, actual, text) => expect(overText(planned, actual)).toBe(text))
})
