/** Keys of the demo, the same every time. */
export const key = (noun: number, n: number): string =>
  `5e7d0000-${noun.toString(16).padStart(4, '0')}-4000-8000-${n.toString(16).padStart(12, '0')}`

const HOUR_MS = 3_600_000

/** The moment so many hours before `now`. */
export const before = (now: string, hours: number): string =>
  new Date(Date.parse(now) - hours * HOUR_MS).toISOString()
