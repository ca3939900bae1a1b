import { amountOf, minorOf, moneyText } from '../units/money.ts'

/** What a price is made of. Amounts and rates in currency units, areas mm². */
export interface QuoteInput {
  /** ISO 4217. */
  currency: string
  /** Pieces the customer gets. */
  pieces: number
  /** Pieces turned, spares among them. */
  piecesMade: number
  /** Cost of the boards the cut list buys or takes from those on hand; absent when the wood has no price. */
  woodCost?: number
  /** Whether some of that wood is the shop’s own already. */
  fromHand?: boolean
  /** Extra wood over that, a fraction. */
  extraWood: number
  /** Blanks that the boards at hand do not yield. */
  blanksUnmet?: number
  minutes: number
  /** Fraction of paid time added for rest and interruption. */
  restAllowance: number
  labourPerHour: number
  abrasivePerPiece: number
  finishPerSquareMetre: number
  /** Surface of one piece that gets a finish, mm²; 0 without one. */
  surfaceFinished: number
  /** Fraction of cost. */
  marginOnCost: number
  minimumCharge: number
}

/** One line of the price; amounts in minor units of the currency. */
interface PriceLine {
  key: string
  name: string
  minor: number
  why: string
}

/** The price of the set before any wood is cut; amounts in currency units. */
export interface Quote {
  currency: string
  lines: { key: string; name: string; amount: number; why: string }[]
  total: number
  perPiece: number
  /** What the price leaves out or rests on. */
  cautions: string[]
}

const percent = (fraction: number): string => `${Math.round(fraction * 1000) / 10} %`

const hoursText = (minutes: number): string => {
  const whole = Math.round(minutes)
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`
}

function costLines(input: QuoteInput): PriceLine[] {
  const { currency, piecesMade: made } = input
  const line = (key: string, name: string, amount: number, why: string): PriceLine => ({
    key,
    name,
    minor: minorOf(amount, currency),
    why,
  }) // prettier-ignore
  const rate = `${moneyText(minorOf(input.labourPerHour, currency), currency)} an hour`
  const labour = (input.minutes / 60) * input.labourPerHour
  const squareMetres = (input.surfaceFinished * made) / 1e6
  const lines = [
    line('labour', 'Labour', labour, `${hoursText(input.minutes)} at ${rate}`),
    line(
      'rest',
      'Rest and interruption',
      labour * input.restAllowance,
      `${percent(input.restAllowance)} of the labour`,
    ),
    line('abrasives', 'Abrasives', input.abrasivePerPiece * made, `${made} pieces, spares among them`),
    line(
      'finish',
      'Finish',
      input.finishPerSquareMetre * squareMetres,
      `${squareMetres.toFixed(2)} m² over ${made} pieces`,
    ),
  ] // prettier-ignore
  if (input.woodCost === undefined) return lines
  const onHand = input.fromHand ? ', those on hand at what they are worth' : ''
  const wood = line('wood', 'Wood', input.woodCost, `the boards of the cut list, spares among them${onHand}`)
  const why = `${percent(input.extraWood)} more than the cut list, for what a board hides`
  return [wood, line('extra-wood', 'Extra wood', input.woodCost * input.extraWood, why), ...lines]
}

function cautionsOf(input: QuoteInput): string[] {
  const cautions: string[] = []
  if (input.woodCost === undefined)
    cautions.push(
      'The wood has no price, so this price is without wood: set a price per board foot or on the boards.',
    )
  if (input.blanksUnmet)
    cautions.push(`The boards at hand lack ${input.blanksUnmet} blanks: their wood is not in this price.`)
  if (input.labourPerHour === 0)
    cautions.push('The shop has no hourly rate, so labour counts nothing in this price.')
  return cautions
}

/**
 * The price of a batch: wood, labour, abrasives and finish, margin on their sum, and what is missing to the
 * shop's minimum charge. Lines are whole minor units of the currency and add up to the total exactly. Wood
 * without a price is left out and a caution says so.
 */
export function quoteOf(input: QuoteInput): Quote {
  const { currency } = input
  const lines = costLines(input).filter(
    (line) => line.minor !== 0 || line.key === 'labour' || line.key === 'wood',
  )
  const sum = (): number => lines.reduce((total, line) => total + line.minor, 0)
  const margin = Math.round(sum() * input.marginOnCost)
  if (margin > 0)
    lines.push({
      key: 'margin',
      name: 'Margin',
      minor: margin,
      why: `${percent(input.marginOnCost)} on cost`,
    })
  const short = minorOf(input.minimumCharge, currency) - sum()
  if (short > 0)
    lines.push({
      key: 'minimum',
      name: 'Up to the minimum charge',
      minor: short,
      why: 'the least the shop takes for a job',
    })
  const total = sum()
  return {
    currency,
    lines: lines.map(({ key, name, minor, why }) => ({ key, name, amount: amountOf(minor, currency), why })),
    total: amountOf(total, currency),
    perPiece: amountOf(Math.round(total / input.pieces), currency),
    cautions: cautionsOf(input),
  }
}
