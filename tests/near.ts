import { expect } from 'vitest'

/** Tolerance of a published value: absolute, relative, or none at all. */
export type Tolerance = { abs?: number; rel?: number; exact?: boolean } | number

/** Holds numbers, lists and records of numbers to a published value within its own tolerance. */
export function near(actual: unknown, expected: unknown, tolerance: Tolerance, what = ''): void {
  if (typeof expected === 'number') {
    const t = typeof tolerance === 'number' ? { abs: tolerance } : tolerance
    const allowed = Math.max(t.abs ?? 0, (t.rel ?? 0) * Math.abs(expected))
    expect(actual, what).toBeTypeOf('number')
    expect(
      Math.abs((actual as number) - expected),
      `${what}: ${actual} against ${expected}`,
    ).toBeLessThanOrEqual(allowed)
  } else if (Array.isArray(expected)) {
    expect(actual, what).toHaveLength(expected.length)
    for (const [i, value] of expected.entries())
      near((actual as unknown[])[i], value, tolerance, `${what}[${i}]`)
  } else if (typeof expected === 'object' && expected !== null) {
    for (const [key, value] of Object.entries(expected))
      near((actual as Record<string, unknown>)[key], value, tolerance, `${what}.${key}`)
  } else expect(actual, what).toEqual(expected)
}
