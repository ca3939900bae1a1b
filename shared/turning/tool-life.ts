/** Minutes of cutting between touch-ups that were counted while the work ran at a speed at the rim, m/s. */
export interface CountedLife {
  minutes: number
  rim: number
}

/** Taylor's law of tool life V·T^n = C: V m/s at the rim, T minutes; C is the speed at which an edge lasts one minute. */
export interface ToolLifeLaw {
  n: number
  C: number
}

/**
 * The exponent where a shop has counted at one speed only. Of metal cutting with high-speed steel it is given as 0.125 to
 * 0.25 (from memory); the upper end, for it changes life least. No figure for wood is known.
 */
export const USUAL_EXPONENT = 0.25
/** What an exponent fitted to counted lives may be; outside it the counts, not the wood, are told. Common practice, no source. */
const EXPONENTS = { least: 0.1, most: 1 }
/** The law is of metal: it may not change a counted life by more than this. Common practice, no source. */
const MOST_CHANGE = 2
/** Speeds that lie closer together than this tell nothing of the exponent. Common practice, no source. */
const APART = 1.15

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length

/** Slope of log V over log T by least squares, turned round: the exponent; undefined where the counts do not tell one. */
function fittedExponent(counted: readonly CountedLife[]): number | undefined {
  const rims = counted.map(({ rim }) => rim)
  if (Math.max(...rims) / Math.min(...rims) < APART) return undefined
  const points = counted.map(({ minutes, rim }) => ({ t: Math.log(minutes), v: Math.log(rim) }))
  const [t0, v0] = [mean(points.map(({ t }) => t)), mean(points.map(({ v }) => v))]
  const across = points.reduce((sum, { t, v }) => sum + (t - t0) * (v - v0), 0)
  // Of log T on log V: what was counted is the life; the speed is known.
  const n = -points.reduce((sum, { v }) => sum + (v - v0) ** 2, 0) / across
  return n >= EXPONENTS.least && n <= EXPONENTS.most ? n : undefined
}

/**
 * The law through counted lives: exactly through two at different speeds, by least squares through more; with the usual
 * exponent, and `n` not `fitted`, where the speeds lie too close together or the counts contradict the law. At least one
 * life is needed.
 *
 * @example toolLifeLaw([{ minutes: 1, rim: 8 }]).C // 8
 */
export function toolLifeLaw(counted: readonly CountedLife[]): ToolLifeLaw & { fitted: boolean } {
  const own = fittedExponent(counted)
  const n = own ?? USUAL_EXPONENT
  const C = Math.exp(mean(counted.map(({ minutes, rim }) => Math.log(rim) + n * Math.log(minutes))))
  return { n, C, fitted: own !== undefined }
}

/**
 * Minutes that an edge lasts at a speed at the rim, m/s, by Taylor's law (F. W. Taylor, On the Art of Cutting Metals, 1907).
 *
 * @example toolLife({ n: 0.5, C: 400 }, 200) // 4
 */
export const toolLife = ({ n, C }: ToolLifeLaw, rim: number): number => (C / rim) ** (1 / n)

/**
 * Counted lives brought to another speed: minutes at `rim`, m/s, never more than twice nor less than half of what was
 * counted, for the law is of metal and is trusted only so far. Without a speed, the mean of what was counted.
 *
 * @example lifeAtRim([{ minutes: 16, rim: 8 }], 8) // 16
 * @example lifeAtRim([{ minutes: 16, rim: 8 }], 4) // 32
 */
export function lifeAtRim(counted: readonly CountedLife[], rim?: number): number {
  const minutes = counted.map((life) => life.minutes)
  if (rim === undefined) return Math.exp(mean(minutes.map(Math.log)))
  const [least, most] = [Math.min(...minutes) / MOST_CHANGE, Math.max(...minutes) * MOST_CHANGE]
  return Math.min(most, Math.max(least, toolLife(toolLifeLaw(counted), rim)))
}
