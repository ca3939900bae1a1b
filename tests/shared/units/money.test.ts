import { describe, expect, it } from 'vitest'
import { amountOf, minorDigits, minorOf, moneyText } from '../../../shared/units/money.ts'

describe('money', () => {
  it('knows the minor digits of ISO 4217', () => {
    // ISO 4217 list one: yen 0, Kuwaiti dinar 3, most others 2.
    expect(['JPY', 'KWD', 'USD', 'EUR', 'TND', 'CLP'].map(minorDigits)).toEqual([0, 3, 2, 2, 3, 0])
  })
  it('rounds written halves away from zero', () => {
    expect(minorOf(1.005, 'USD')).toBe(101)
    expect(minorOf(-1.005, 'USD')).toBe(-101)
    expect(minorOf(2.5, 'JPY')).toBe(3)
    expect(minorOf(0.0005, 'KWD')).toBe(1)
    expect(amountOf(101, 'USD')).toBe(1.01)
  })
  it('shows the amount with its currency', () => {
    expect(moneyText(123450, 'USD')).toBe('1,234.50 USD')
    expect(moneyText(-5, 'USD')).toBe('-0.05 USD')
    expect(moneyText(1234567, 'JPY')).toBe('1,234,567 JPY')
    expect(moneyText(1234567, 'KWD')).toBe('1,234.567 KWD')
  })
})
