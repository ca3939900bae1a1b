import { inches, type LengthStyle, lengthFigure, nm, readLength } from '../../shared/units/length.ts'

/** Keys of a row; what they do is in `pressed`. */
export type Key = string

const digits: Key[][] = [
  ['7', '8', '9', '⌫'],
  ['4', '5', '6', 'C'],
]

/** Sixteenths by themselves, finer ones by adding to them: as a rule and a caliper are read. */
const fractions: Key[][] = [
  ['1/16', '1/8', '3/16', '1/4'],
  ['5/16', '3/8', '7/16', '1/2'],
  ['9/16', '5/8', '11/16', '3/4'],
  ['13/16', '7/8', '15/16', '+1/32'],
]

/** The keys for readings in one style, row by row. */
export function keypadRows(style: LengthStyle | 'whole'): Key[][] {
  if (style === 'fraction') return [...digits, ['1', '2', '3', '0'], ...fractions, ['-1/64', '+1/64']]
  if (style === 'whole') return [...digits, ['1', '2', '3', '0']]
  return [...digits, ['1', '2', '3', '.'], ['0', '00']]
}

/** How a key is read out. */
export const keyName = (key: Key): string =>
  ({
    '⌫': 'Delete the last',
    C: 'Clear',
    '.': 'Decimal point',
    '+1/32': 'Add 1/32',
    '+1/64': 'Add 1/64',
    '-1/64': 'Take off 1/64',
  })[key] ?? key

const SIXTY_FOURTH = inches(1 / 64)
const LONGEST = 12

/** Whole inches and sixty-fourths of what is written; nothing where it cannot be read. */
function sixtyFourths(text: string): number {
  const mm = readLength(text, 'in')
  return mm === undefined ? 0 : Math.round(nm(mm) / nm(SIXTY_FOURTH))
}

const written = (count: number): string => (count <= 0 ? '' : lengthFigure(count * SIXTY_FOURTH, 'fraction'))

function pressedFraction(text: string, key: Key): string {
  const now = sixtyFourths(text)
  const step = /^([+-])1\/(\d+)$/.exec(key)
  if (step) return written(now + (step[1] === '+' ? 1 : -1) * (64 / Number(step[2])))
  const fraction = /^(\d+)\/(\d+)$/.exec(key)
  if (fraction) return written(Math.floor(now / 64) * 64 + (Number(fraction[1]) * 64) / Number(fraction[2]))
  // A digit after a fraction begins a new reading.
  return /^\d*$/.test(text) ? text + key : key
}

/**
 * The reading as text after a key of the keypad. Fractions of an inch: a digit goes to the whole inches, a
 * fraction key sets the fraction, the others add to it; delete takes the fraction off first.
 */
export function pressed(text: string, key: Key, style: LengthStyle | 'whole'): string {
  if (key === 'C') return ''
  if (key === '⌫')
    return style === 'fraction' && text.includes('/')
      ? written(Math.floor(sixtyFourths(text) / 64) * 64)
      : text.slice(0, -1)
  if (style === 'fraction') return pressedFraction(text, key).slice(0, LONGEST)
  if (key === '.' && text.includes('.')) return text
  return (key === '.' && text === '' ? '0.' : text + key).slice(0, LONGEST)
}
