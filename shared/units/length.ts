/** The two measuring systems a job may be written in. */
export type Units = 'in' | 'mm'

/** How lengths are shown to a person: fractions of an inch, decimal inches, or millimetres. */
export type LengthStyle = 'fraction' | 'decimal' | 'mm'

/** Millimetres in one inch, exact by definition (international inch, 1959). */
export const MM_PER_INCH = 25.4

/** Millimetres of so many inches. */
export const inches = (n: number): number => n * MM_PER_INCH

/**
 * The integer nanometres of a length in mm: every comparison of lengths is made on these, so that exact
 * fits stay exact. 1/64 in = 396,875 nm.
 */
export const nm = (mm: number): number => Math.round(mm * 1e6)

/** Millimetres of integer nanometres. */
export const mmOfNm = (nanometres: number): number => nanometres / 1e6

/** The length rounded up to a whole multiple of `step`, both mm; an exact multiple stays as it is. */
export const roundedUpMm = (mm: number, step: number): number =>
  mmOfNm(Math.ceil(nm(mm) / nm(step)) * nm(step))

/** The forms a length can be written in, for messages. */
export const READABLE_LENGTHS =
  'a number of mm, or text such as 2 3/8 in, 2-3/8", 2.375in, 8 ft, 8\' 4 1/2", 60.3 mm, 6 cm'

const FRACTION_SIGNS: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
} // prettier-ignore

const MM_PER: Record<string, number> = { in: MM_PER_INCH, ft: 12 * MM_PER_INCH, mm: 1, cm: 10, m: 1000 }
const UNIT_WORDS: Record<string, string> = {
  '"': 'in',
  in: 'in',
  inch: 'in',
  inches: 'in',
  "'": 'ft',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
} // prettier-ignore

const NUMBER = String.raw`(?:\d+[ -]+\d+\/\d+|\d+\/\d+|\d*[.,]\d+|\d+[.,]?)`
const UNIT = `(?:inches|inch|in|"|feet|foot|ft|'|mm|cm|m)`
const FEET_AND_INCHES = new RegExp(
  `^(${NUMBER}) *(?:feet|foot|ft|') *[-,]? *(${NUMBER}) *(?:inches|inch|in|")?\\.?$`,
)
const ONE_LENGTH = new RegExp(`^(${NUMBER}) *(${UNIT})?\\.?$`)

/** One plain number, fraction or mixed number; `undefined` when it is none. */
function readNumber(text: string): number | undefined {
  const mixed = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(text)
  if (mixed) {
    const [whole, top, bottom] = [Number(mixed[1] ?? 0), Number(mixed[2]), Number(mixed[3])]
    if (bottom === 0 || (mixed[1] !== undefined && top >= bottom)) return undefined
    return (whole * bottom + top) / bottom
  }
  const n = Number(text.replace(',', '.'))
  return Number.isFinite(n) ? n : undefined
}

/**
 * Reads a length in any form people write, in mm. A number is mm; text without a unit is in `units`; a comma
 * is always a decimal comma. `undefined` when it cannot be read.
 *
 * @example readLength('2-3/8"', 'in') // 60.325
 * @example readLength('60,3', 'mm') // 60.3
 * @example readLength("8' 4 1/2\"", 'mm') // 2552.7
 */
export function readLength(written: number | string, units: Units): number | undefined {
  if (typeof written === 'number') return Number.isFinite(written) ? written : undefined
  if (written.length > 60 || (written.includes(',') && written.includes('.'))) return undefined
  let text = written
    .trim()
    .toLowerCase()
    .replace(/[″“”]|''/g, '"')
    .replace(/[′‘’]/g, "'")
    .replace(/⁄/g, '/')
  text = text.replace(/ *([½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚])/g, (_, sign: string) => ` ${FRACTION_SIGNS[sign]}`).trim()
  const negative = text.startsWith('-')
  if (negative) text = text.slice(1).trim()
  const mm = readUnsigned(text.replace(/\s+/g, ' '), units)
  // To whole nanometres, so that 8 ft is 2438.4 mm and not a binary shade beside it.
  return mm === undefined ? undefined : mmOfNm(nm(negative && mm !== 0 ? -mm : mm))
}

function readUnsigned(text: string, units: Units): number | undefined {
  const one = ONE_LENGTH.exec(text)
  if (one) {
    const n = readNumber(one[1]!)
    const unit = one[2] === undefined ? units : UNIT_WORDS[one[2]]
    return n === undefined ? undefined : n * MM_PER[unit!]!
  }
  const two = FEET_AND_INCHES.exec(text)
  if (!two) return undefined
  const [feet, rest] = [readNumber(two[1]!), readNumber(two[2]!)]
  return feet === undefined || rest === undefined ? undefined : (feet * 12 + rest) * MM_PER_INCH
}

const trimmed = (n: number, digits: number): string => {
  const text = n.toFixed(digits)
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

const highestFactor = (a: number, b: number): number => (b === 0 ? a : highestFactor(b, a % b))

/**
 * A length as people read it: `2-3/8 in` (nearest 1/64, reduced), `2.375 in`, or `60.3 mm`.
 *
 * @example lengthText(60.325, 'fraction') // '2-3/8 in'
 * @example lengthText(60.325, 'decimal') // '2.375 in'
 * @example lengthText(60.325, 'mm') // '60.3 mm'
 */
export function lengthText(mm: number, style: LengthStyle): string {
  return `${lengthFigure(mm, style)} ${style === 'mm' ? 'mm' : 'in'}`
}

/** The figure of `lengthText` without its unit, for columns whose heading carries the unit. */
export function lengthFigure(mm: number, style: LengthStyle): string {
  const sign = mm < 0 ? '-' : ''
  const size = Math.abs(mm)
  if (style === 'mm') return unsignedZero(sign, (Math.round(nm(size) / 1e5) / 10).toFixed(1))
  if (style === 'decimal') return unsignedZero(sign, trimmed(size / MM_PER_INCH, 4))
  const sixtyFourths = Math.round(nm(size) / 396_875)
  const [whole, top] = [Math.floor(sixtyFourths / 64), sixtyFourths % 64]
  if (top === 0) return unsignedZero(sign, String(whole))
  const factor = highestFactor(top, 64)
  const fraction = `${top / factor}/${64 / factor}`
  return sign + (whole === 0 ? fraction : `${whole}-${fraction}`)
}

/** The most by which a shown limit may stand beside the true one, mm: far below what a caliper tells. */
const SHOWN_LIMIT_MM = 0.005

/**
 * A limit as people read it: like `lengthText`, but finer where the nearest fraction would move the limit.
 *
 * @example limitText(15.875, 'fraction') // '5/8 in'
 * @example limitText(16.075, 'fraction') // '0.633 in'
 * @example limitText(16.075, 'mm') // '16.08 mm'
 */
export function limitText(mm: number, style: LengthStyle): string {
  const text = lengthText(mm, style)
  if (Math.abs(readLength(text, 'mm')! - mm) <= SHOWN_LIMIT_MM) return text
  return style === 'mm'
    ? `${(Math.round(nm(mm) / 1e4) / 100).toFixed(2)} mm`
    : `${(mm / MM_PER_INCH).toFixed(3)} in`
}

const unsignedZero = (sign: string, figure: string): string =>
  /^[0.]+$/.test(figure) ? figure : sign + figure

/** The style a job's own units suggest when the person has chosen none. */
export const styleOf = (units: Units): LengthStyle => (units === 'in' ? 'fraction' : 'mm')
