import type { Shop } from '../shared/shop.ts'
import { readLength, type Units } from '../shared/units/length.ts'
import { readTemperature, temperatureUnit } from '../shared/units/temperature.ts'
import { enteredNumber, pathSteps, withEntry } from './entry.ts'

/** Settings as they are being edited: what was typed stays text until it is sent. */
export type ShopFile = { units: Units } & Record<string, unknown>

/** Settings that are fractions inside and percentages on screen. */
const percents = new Set([
  'extraWood',
  'spareConfidence',
  'learningRate',
  'restAllowance',
  'timeSpread',
  'marginOnCost',
  'grossOver',
  'cr',
  'ct',
]) // prettier-ignore

/** Settings that are plain numbers, by the last name of their path. */
const numbers = new Set([
  'limitRpm',
  'motorRpm',
  'least',
  'most',
  'piecesPerEdge',
  'minutes',
  'rim',
  'calipers',
  'pricePerBoardFoot',
  'spoiled',
  'made',
  'hoursPerDay',
  'people',
  'gaugeMinutes',
  'mounting',
  'toolChange',
  'speedChange',
  'reset',
  'restMove',
  'touchUpsPerRegrind',
  'touchUpMinutes',
  'regrindMinutes',
  'labourPerHour',
  'finishPerSquareMetre',
  'abrasivePerPiece',
  'minimumCharge',
  'minimumFeet',
  'price',
  'practice',
  'sgGreen',
  'sg12',
  'moeGPa',
  'morMPa',
  'hardnessN',
  'shrinkRadialPct',
  'shrinkTangentialPct',
  'humidityPct',
]) // prettier-ignore

/** Settings that are lists of numbers or days, typed with commas or blanks between. */
const lists = new Set(['grits', 'steps', 'closed'])

/** Settings that are lists of lengths, typed with semicolons between: a comma may be the decimal one. */
const lengthLists = new Set(['rests', 'motorPulleys', 'spindlePulleys'])

/** Settings that are lengths outside the allowances. */
const lengths = new Set([
  'betweenCentres',
  'swing',
  'swingOverRest',
  'restLength',
  'width',
  'length',
  'kerf',
  'endTrim',
  'edgeTrim',
  'minOffcut',
]) // prettier-ignore

/** Whether a setting, by its path, is a fraction inside and a percentage on screen. */
export const isPercent = (path: string): boolean => percents.has(String(pathSteps(path).at(-1)))

const isLength = (path: string) => {
  const name = String(pathSteps(path).at(-1))
  return lengths.has(name) || (path.startsWith('allowances.') && name !== 'practice')
}

/** Every text in the settings with its path. */
function texts(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, inner]) =>
    texts(inner, Array.isArray(value) ? `${path}[${name}]` : path ? `${path}.${name}` : name),
  )
}

/** A fraction from a percentage as typed; what is no number stays, to be refused by name. */
function fraction(text: string): number | string | undefined {
  const percent = enteredNumber(text.replace('%', ''))
  return typeof percent === 'number' ? percent / 100 : percent
}

const listed = (text: string) =>
  text
    .split(/[\s,;]+/)
    .filter(Boolean)
    .map((each) => enteredNumber(each) ?? each)

const lengthsOf = (text: string): string[] =>
  text
    .split(';')
    .map((each) => each.trim())
    .filter(Boolean)

/** The settings as they are read and sent: numbers, fractions and lists out of what was typed; lengths stay as entered. */
export function sentShop(file: ShopFile): ShopFile {
  return texts(file).reduce((sent, [path, text]) => {
    const name = String(pathSteps(path).at(-1))
    if (isPercent(path)) return withEntry(sent, path, fraction(text))
    if (lengthLists.has(name)) return withEntry(sent, path, lengthsOf(text))
    if (lists.has(name)) return withEntry(sent, path, listed(text))
    if (numbers.has(name) || path.startsWith('minuteFactors.'))
      return withEntry(sent, path, enteredNumber(text))
    return isLength(path) && text.trim() === '' ? withEntry(sent, path, undefined) : sent
  }, file)
}

/** What was typed without a unit, with the one it was read in. */
function withUnit(path: string, text: string, units: Units): string {
  if (isLength(path) && readLength(text, 'in') !== readLength(text, 'mm')) return `${text} ${units}`
  if (lengthLists.has(String(pathSteps(path).at(-1))))
    return lengthsOf(text)
      .map((each) => (readLength(each, 'in') === readLength(each, 'mm') ? each : `${each} ${units}`))
      .join('; ')
  if (path === 'air.temperatureC' && readTemperature(text, 'in') !== readTemperature(text, 'mm'))
    return `${text} ${temperatureUnit(units)}`
  return text
}

/** The settings in other units: lengths and temperatures typed without a unit get the one they were read in. */
export function shopInUnits(file: ShopFile, units: Units): ShopFile {
  if (file.units === units) return file
  const kept = texts(file).reduce((next, [path, text]) => {
    const told = withUnit(path, text, file.units)
    return told === text ? next : withEntry(next, path, told)
  }, file)
  return { ...kept, units }
}

export const shopFileOf = (shop: Shop): ShopFile => ({ ...shop }) as unknown as ShopFile
