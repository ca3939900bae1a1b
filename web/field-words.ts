import { lengthText, READABLE_LENGTHS, readLength, type Units } from '../shared/units/length.ts'
import { allowanceWords } from './elements/allowance-words.ts'
import { pathSteps } from './entry.ts'

const jobWords: Record<string, string> = {
  name: 'Name of the job',
  customer: 'Customer',
  due: 'Due',
  quantity: 'How many',
  units: 'Written in',
  use: 'Made for',
  match: 'A matching set',
  mirrored: 'In mirrored pairs',
  lot: 'Lot of wood',
  'stair.run': 'Length of the run',
  'stair.gap': 'Ball that must not pass',
  'stair.load': 'Load',
  'stair.between': 'Between the rails',
  'stair.between[0]': 'Lower rail',
  'stair.between[1]': 'Upper rail',
  species: 'Wood',
  moisture: 'Moisture when turned',
  serviceMoisture: 'Moisture in use',
  'lumber.moisture': 'Moisture when sawn',
  'lumber.dryness': 'Dryness',
  'lumber.grade': 'Grade',
  'lumber.sap': 'Sapwood',
  'lumber.oneBoard': 'All from one board',
  'lumber.fromRack': 'Boards on hand first',
  grain: 'Grain',
  mount: 'Held by',
  perBlank: 'Parts from one stick',
  finish: 'Finish',
  'profile.split': 'Turned as a glued pair and split',
  'profile.stations': 'Stations',
  joints: 'Joints',
  'tolerance.diameter': 'Tolerance of the diameter',
  'tolerance.position': 'Tolerance of the position',
  'tolerance.length': 'Tolerance of the length',
  'tolerance.side': 'Tolerance of the side',
  'tolerance.tenon': 'Tolerance of tenons',
  'instrument.jawWidth': 'Width of the caliper jaws',
  notes: 'Notes',
}

/** The part of a row that a field of it is. */
const rowWords: Record<string, string> = {
  at: 'place',
  diameter: 'diameter',
  then: 'shape',
  rise: 'rise',
  depth: 'depth',
  side: 'side',
  name: 'name',
  key: 'own key',
  shoulder: 'shoulder',
  shoulderLength: 'length of the rounding',
  plus: 'tolerance over',
  minus: 'tolerance under',
  face: 'where round it',
  angle: 'angle',
  kind: 'kind',
  stage: 'when it is cut',
  betweenCentres: 'between centres',
  swing: 'swing over the bed',
  swingOverRest: 'swing over the rest base',
  restLength: 'length of the tool rest',
  speeds: 'speeds',
  limitRpm: 'limit of chuck or maker’s plate',
  width: 'width',
  length: 'length',
  steel: 'steel',
  piecesPerEdge: 'pieces between touch-ups',
  lives: 'counted lives of the edge',
  minutes: 'minutes',
  rim: 'speed at the rim',
  species: 'wood',
  nominal: 'nominal',
  surfaced: 'surfaced',
  pricePerBoardFoot: 'price per board foot',
  source: 'source of the figures',
  sgGreen: 'specific gravity, green volume',
  sg12: 'specific gravity at 12 % MC',
  moeGPa: 'stiffness',
  hardnessN: 'side hardness',
  shrinkRadialPct: 'radial shrinkage',
  shrinkTangentialPct: 'tangential shrinkage',
  cr: 'radial change per 1 % MC',
  ct: 'tangential change per 1 % MC',
  counts: 'how boards are counted',
  measure: 'tally',
  grossOver: 'gross over net',
  minimumFeet: 'sells from',
  minimumCharge: 'charges at least',
  per: 'what it is charged for',
}

const shopWords: Record<string, string> = {
  name: 'Name of the shop',
  heading: 'Heading of prints',
  currency: 'Currency',
  units: 'Lengths without a unit are',
  calipers: 'Calipers that can stay set',
  lathes: 'Lathes',
  tools: 'Turning tools',
  stock: 'Stock and prices',
  yardBoards: 'Boards the yard usually brings',
  yards: 'Yards',
  species: 'Woods of the shop',
  lots: 'Lots of wood',
  air: 'Air of the shop',
  'air.temperatureC': 'Temperature of the shop',
  'air.humidityPct': 'Humidity of the shop',
  grade: 'Grade bought',
  extraWood: 'Extra for choice',
  priceBy: 'Boards are billed',
  kerf: 'Kerf of the saw',
  endTrim: 'Trimmed off each end',
  edgeTrim: 'Trimmed off each edge',
  minOffcut: 'Offcuts kept from',
  spareConfidence: 'Confidence that the blanks suffice',
  record: 'Record of spoiled pieces',
  'record.made': 'Pieces made, on your record',
  'record.spoiled': 'Spoiled of them',
  grits: 'Grits, in order',
  touchUpMinutes: 'A touch-up takes',
  regrindMinutes: 'A regrind takes',
  touchUpsPerRegrind: 'Touch-ups between regrinds',
  learningRate: 'Learning rate',
  hoursPerDay: 'Hours at the bench',
  people: 'People at work on batches',
  workDays: 'Days of the week the shop works',
  closed: 'Closed on',
  learningForm: 'The rate is of',
  gaugeMinutes: 'Making one gap gauge',
  'changes.mounting': 'Mounting a blank',
  'changes.toolChange': 'Laying one tool down, taking another up',
  'changes.speedChange': 'Setting another speed',
  'changes.reset': 'Setting a caliper',
  'changes.restMove': 'Moving the tool rest',
  restAllowance: 'Added for rest and interruption',
  timeSpread: 'Spread of a batch’s time',
  labourPerHour: 'Labour',
  marginOnCost: 'Margin on cost',
  finishPerSquareMetre: 'Finish',
  abrasivePerPiece: 'Abrasives',
  minimumCharge: 'Least charge',
}

const shopRows: Record<string, string> = {
  lathes: 'Lathe',
  tools: 'Tool',
  stock: 'Thickness',
  yardBoards: 'Board',
  species: 'Wood',
  lots: 'Lot',
}

/** `maxWidth` in words, for a field that has none here. */
const spelled = (name: string) => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()

function rowText(row: string, name: string | undefined, words = rowWords): string {
  return name === undefined ? row : `${row}, ${words[name] ?? spelled(name)}`
}

const allowance = (name: string) =>
  name === 'bow'
    ? allowanceWords.bowPerMm
    : (allowanceWords[name as keyof typeof allowanceWords] ?? spelled(name))

const sizeWords = [
  ['width', 'diameter', 'thickness or diameter'],
  ['length along the part', 'size', 'width'],
]
const kinds = ['mortise', 'hole', 'tenon']

function jointText(steps: (string | number)[], kind: string | undefined): string {
  const [, index, name, which] = steps
  const row = `Joint ${Number(index) + 1}`
  if (name !== 'size') return rowText(row, name as string | undefined)
  return `${row}, ${sizeWords[Number(which ?? 0)]?.[kinds.indexOf(kind ?? '')] ?? 'size'}`
}

/**
 * What a field of a job is called on screen; stations are numbered from the foot, 0. `jointKinds` tells what the
 * sizes of each joint are.
 *
 * @example jobField('profile.stations[3].rise') // 'Station 3, rise'
 */
export function jobField(path: string, jointKinds: readonly string[] = []): string {
  const steps = pathSteps(path)
  const [first, second, third, fourth] = steps
  if (jobWords[path]) return jobWords[path]
  if (first === 'profile' && typeof third === 'number')
    return rowText(`Station ${third}`, fourth as string | undefined)
  if (first === 'joints' && typeof second === 'number') return jointText(steps, jointKinds[second])
  if (first === 'allowances' && second !== undefined) return allowance(String(second))
  return path ? spelled(String(steps.at(-1))) : 'The job'
}

/** `Yard 1, price 2, wood`: a field of a yard, or of one of its prices and services. */
function yardText([, index, name, inner, field]: (string | number)[]): string {
  const yard = `Yard ${Number(index) + 1}`
  if (typeof inner !== 'number') return rowText(yard, name as string | undefined)
  const row = name === 'prices' ? 'price' : 'service'
  return rowText(`${yard}, ${row} ${inner + 1}`, field as string | undefined)
}

/** `Tool 1, counted life 2, speed at the rim`: a field of a life of a tool’s edge. */
const lifeText = ([, tool, , life, field]: (string | number)[]): string =>
  rowText(`Tool ${Number(tool) + 1}, counted life ${Number(life) + 1}`, field as string | undefined)

/**
 * What a setting of the shop is called on screen.
 *
 * @example shopField('lathes[0].swing') // 'Lathe 1, swing over the bed'
 */
export function shopField(path: string): string {
  const [first, second, third, fourth] = pathSteps(path)
  if (shopWords[path]) return shopWords[path]
  if (first === 'allowances' && second !== undefined) return allowance(String(second))
  if (first === 'yards' && typeof second === 'number') return yardText(pathSteps(path))
  if (third === 'lives' && typeof fourth === 'number') return lifeText(pathSteps(path))
  if (first === 'minuteFactors') return `Your own factor, ${String(second).replaceAll('-', ' ')}`
  const row = shopRows[String(first)]
  if (row && typeof second === 'number') {
    const speed = { least: 'slowest speed', most: 'fastest speed', steps: 'steps of its speeds' }
    const text = third === 'speeds' && fourth ? speed[fourth as keyof typeof speed] : undefined
    return text
      ? `${row} ${second + 1}, ${text}`
      : rowText(`${row} ${second + 1}`, third as string | undefined)
  }
  return shopWords[String(first)] ?? (path ? spelled(String(first)) : 'The settings')
}

/** What was read stands in quotes and stays as it was typed. */
const outsideQuotes = (text: string, change: (plain: string) => string): string =>
  text
    .split(/("(?:[^"\\]|\\.)*")/)
    .map((part, i) => (i % 2 === 1 ? part : change(part)))
    .join('')

const inchesFirst = (mm: string): string =>
  `${lengthText(readLength(`${mm} mm`, 'mm') ?? 0, 'decimal')} (${mm} mm)`

/** What can be typed for a length: a bare figure is no number of mm where inches are written. */
const TYPED_LENGTHS = READABLE_LENGTHS.replace('a number of mm, or text such as', 'a length such as')

/**
 * A message with its lengths in the units the person writes in first.
 *
 * @example inUnitsFirst('make it less than 12.7 mm (0.5 in) deep', 'in') // 'make it less than 0.5 in (12.7 mm) deep'
 */
export function inUnitsFirst(message: string, units: Units): string {
  if (units === 'mm') return message
  if (message.includes(READABLE_LENGTHS))
    return message
      .split(READABLE_LENGTHS)
      .map((part) => inUnitsFirst(part, units))
      .join(TYPED_LENGTHS)
  return outsideQuotes(message, (plain) =>
    plain
      .replace(/between ([\d.]+) and ([\d.]+) mm/g, 'between $1 mm and $2 mm')
      .replace(/((?<![\d.])-?[\d.]+) mm(?: \((-?[\d.]+ in)\))?/g, (_, mm: string, inches?: string) =>
        inches ? `${inches} (${mm} mm)` : inchesFirst(mm),
      ),
  )
}

/**
 * A message on a fraction that is entered as a percentage.
 *
 * @example inPercent('must be at most 0.999; read 1.2') // 'must be at most 99.9 %; read 120 %'
 */
export const inPercent = (message: string): string =>
  outsideQuotes(message, (plain) =>
    plain.replace(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g, (figure) => `${Math.round(Number(figure) * 1e8) / 1e6} %`),
  )
