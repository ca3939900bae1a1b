import { type LengthStyle, limitText, nm } from '../units/length.ts'
import type { SettingSum } from './calipers.ts'

const words: readonly (readonly [Exclude<keyof SettingSum, 'target'>, string])[] = [
  ['film', 'for the film'],
  ['turned', 'for sanding'],
  ['sizing', 'for the finishing cut'],
]

/**
 * A caliper’s setting as a sum that a person can follow, without what comes to nothing; lengths as true as a caliper
 * tells them.
 *
 * @example sumText({ target: 25.4, film: 0, turned: 0.396875, sizing: 1.5875 }, 'fraction') // '1 in finished + 1/64 in for sanding + 1/16 in for the finishing cut'
 * @example sumText({ target: 25, film: -0.1, turned: 0.4, sizing: 1.6 }, 'mm') // '25.0 mm finished − 0.1 mm for the film + 0.4 mm for sanding + 1.6 mm for the finishing cut'
 */
export function sumText(sum: SettingSum, style: LengthStyle): string {
  const more = words
    .filter(([name]) => nm(sum[name]) !== 0)
    .map(([name, what]) => `${sum[name] < 0 ? '−' : '+'} ${limitText(Math.abs(sum[name]), style)} ${what}`)
  return [`${limitText(sum.target, style)} finished`, ...more].join(' ')
}
