import type { Span } from '../profile/profile.ts'
import { inches, lengthText, nm, roundedUpMm, styleOf, type Units } from '../units/length.ts'
import { massOf } from '../wood/density.ts'
import type { Allowances } from './allowances.ts'
import { surfacePlaces } from './feather-edges.ts'
import { type GlueUp, glueLineCautions, glueUpOf } from './glue-up.ts'
import { type LatheSize, latheFit } from './lathe-fit.ts'
import type { Mount } from './mount.ts'
import { roughThickness, type Stock, type StockChoice, stockFor, surfacedThickness } from './nominal.ts'
import { type Shrinkage, shrinkageOf } from './shrinkage.ts'
import { blanksForBatch, type SpoilRecord } from './spares.ts'
import { type JointReach, lengthPartsOf, type PartEnd, stickLength } from './stick.ts'
import { moistureCautions, type StockMoisture } from './wet-stock.ts'

export interface LatheFit {
  name: string
  fits: boolean
  why: string[]
}

/** The square that goes on the lathe and what is sawn for it. Lengths mm, mass g. */
export interface Blank {
  side: number
  sawn: number
  length: number
  stock: { perBlank: number; sticks: number }
  layers: number
  /** How the layers lie about the axis; absent where it is one piece. */
  glueUp?: GlueUp
  /** Absent where the shrinkage of the wood is not known (then `cautions` says so). */
  shrinkage?: Shrinkage
  /** e.g. `8/4`; absent when nothing the shop can get is thick enough (then `cautions` says so). */
  nominal?: string
  /** That stock comes planed on two sides. */
  surfaced?: boolean
  /** Rough thickness of that nominal, and thickness one layer must have at least. */
  thickness: number
  layerThickness: number
  diagonal: number
  /** Absent where the wood has no density on record. */
  mass?: number
  lathes: LatheFit[]
  /** Blanks that must come out good, extra ones, and both together. */
  need: number
  spares: number
  count: number
  practice: number
  /** Where the length goes: part, waste at the foot, at the top, between parts; mm. */
  lengthParts: {
    parts: number
    foot: number
    top: number
    between: number
    mount: Mount
    drivenEnd: 'foot' | 'top'
  }
  cautions: string[]
}

/** All that decides a blank. Lengths mm, density kg/m³. */
export interface BlankInput {
  units: Units
  /** `maxSide`: largest side left square; absent on a part turned all over. */
  part: { length: number; maxDiameter: number; maxSide?: number }
  ends: { foot: PartEnd; top: PartEnd }
  joints: JointReach[]
  mount: Mount
  perBlank: number | 'auto'
  quantity: number
  match: boolean
  split: boolean
  allowances: Allowances
  /** Absent where it is not on record. */
  density?: number
  /** Moisture on the way from the saw to its use; taken as dry where absent. */
  moisture?: StockMoisture
  /** Where glue lines may surface; of one part. */
  spans?: readonly Span[]
  /** What the shop can get of this wood. */
  stock: Stock[]
  lathes: LatheSize[]
  confidence: number
  record: SpoilRecord
  /** Whether a stick of so many parts is stiff enough; asked for `perBlank: "auto"` only. */
  allowsStick?: (parts: number) => boolean
}

/** Parts under this are turned several to a stick when the number is left to the program. Common practice, no source. */
const SHORT_PART = inches(6)

const PARTS_MAX = 100

interface Square extends StockChoice {
  side: number
  length: number
  /** The square wanted once the wood is as dry as it is used. */
  dry: number
  shrinkage?: Shrinkage
}

/** Spring of a stick of this length, mm. */
const bowOf = (length: number, { bowPerMm, bowFree }: Allowances): number =>
  Math.max(0, length - bowFree) * bowPerMm

/** The square for a stick of so many parts, before it is counted. */
function squareFor(input: BlankInput, parts: number): Square {
  const { part, allowances, moisture } = input
  const length = stickLength(input, parts)
  const bow = bowOf(length, allowances)
  const planed = part.maxSide !== undefined
  const dry = part.maxSide ?? part.maxDiameter + allowances.rounding + bow
  const shrinkage = moisture && shrinkageOf(dry, moisture)
  const grown = (more: number) => (planed ? dry + more : roundedUpMm(dry + more, allowances.sideStep))
  const wet = grown(shrinkage?.across ?? 0)
  const stock = stockFor({ side: wet, bow, planed, split: input.split }, input.stock, allowances)
  // Layers are dry before they are glued: nothing of a glue-up shrinks on the lathe.
  const onLathe = stock.layers > 1 ? 0 : (shrinkage?.onLathe ?? 0)
  return {
    side: grown(onLathe),
    length,
    dry,
    ...(shrinkage && { shrinkage: { ...shrinkage, onLathe } }),
    ...stock,
  }
}

/** How the layers of a square lie, with the thickness the boards must have for them. */
function gluedUp(input: BlankInput, square: Square): Pick<Blank, 'glueUp' | 'layerThickness'> {
  const { side, layers, nominal, surfaced, layerThickness, shrinkage, dry } = square
  if (layers === 1) return { layerThickness }
  const { jointing } = input.allowances
  const rough = nominal === undefined ? layerThickness : roughThickness(nominal)
  const wetOverDry = 1 + (shrinkage?.across ?? 0) / dry
  const glueUp = glueUpOf({
    side,
    layers,
    layerMost: ((surfaced ? surfacedThickness(rough) : rough) - jointing) / wetOverDry,
    places: surfacePlaces(input.spans ?? []),
  })
  const thickest = Math.max(glueUp.middle, glueUp.outer)
  const alike = nm(glueUp.middle) === nm(glueUp.outer)
  return { glueUp, layerThickness: alike ? layerThickness : thickest * wetOverDry + jointing }
}

const fitsSomewhere = (input: BlankInput, square: Square): boolean =>
  input.lathes.length === 0 || fits(input, square).some((lathe) => lathe.fits)

function fits(input: BlankInput, { side, length }: Square): LatheFit[] {
  const diagonal = side * Math.SQRT2
  return input.lathes.map((lathe) =>
    latheFit({ length, diagonal }, lathe, input.allowances[input.mount], input.units),
  )
}

/** Parts to be turned: of a split pair one for two halves. */
const turnedParts = ({ split, quantity }: BlankInput): number => (split ? Math.ceil(quantity / 2) : quantity)

function partsPerBlank(input: BlankInput): number {
  if (input.perBlank !== 'auto') return input.perBlank
  if (nm(input.part.length) >= nm(SHORT_PART)) return 1
  const wanted = turnedParts(input)
  let best = 1
  for (
    let parts = 2;
    parts <= Math.min(PARTS_MAX, wanted) && nm(stickLength(input, parts)) <= nm(input.allowances.stickMax);
    parts++
  ) {
    if (!fitsSomewhere(input, squareFor(input, parts)) || !(input.allowsStick?.(parts) ?? true)) break
    best = parts
  }
  return best
}

/**
 * The blank of a part: its square, what is sawn for it, its length with the waste at both ends, the stock it
 * comes from, the lathes it fits and how many are cut. Lengths mm, mass g. What cannot be had is said in
 * `cautions`, each with what would help.
 */
export function blankFor(input: BlankInput): Blank {
  const perBlank = partsPerBlank(input)
  const square = squareFor(input, perBlank)
  const { side, length, sawn, layers, nominal, surfaced, thickness, shrinkage } = square
  const need = Math.ceil(turnedParts(input) / perBlank)
  const count = blanksForBatch({
    need,
    match: input.match,
    record: input.record,
    confidence: input.confidence,
  })
  const blank: Blank = {
    side,
    sawn,
    length,
    stock: { perBlank, sticks: count },
    layers,
    ...(nominal === undefined ? {} : { nominal }),
    ...(surfaced && { surfaced }),
    thickness,
    ...gluedUp(input, square),
    ...(shrinkage && { shrinkage }),
    diagonal: side * Math.SQRT2,
    ...(input.density !== undefined && { mass: massOf(side * side * length, input.density) }),
    lathes: fits(input, square),
    need,
    spares: count - need,
    count,
    practice: input.allowances.practice,
    lengthParts: lengthPartsOf(input, perBlank),
    cautions: [],
  }
  blank.cautions.push(...cautionsOf(blank, input, square))
  return blank
}

function cautionsOf(blank: Blank, input: BlankInput, { missedBy, dry }: Square): string[] {
  const text = (mm: number) => lengthText(mm, styleOf(input.units))
  const cautions: string[] = []
  if (blank.nominal === undefined) {
    cautions.push(
      `Nothing the shop can get is thick enough for a square of ${text(blank.sawn)}: enter thicker stock for this wood in the shop's table.`,
    )
  } else if (blank.layers > 1) {
    cautions.push(
      `Glued up of ${blank.layers} layers of ${blank.nominal}: all from one board, faces planed the same day, 24 h to cure; start slowly${
        blank.layers % 2 === 0
          ? `; a glue line runs through both centres, so ${input.mount === 'spur' ? 'set the spur’s points across it or drive with a cup' : 'take a cup at the tail'}`
          : ''
      }.`,
    )
  }
  if (blank.glueUp) cautions.push(...glueLineCautions(blank.glueUp, input.units))
  if (input.moisture) cautions.push(...moistureCautions(input.moisture, dry, input.units))
  if (missedBy) {
    cautions.push(
      `${missedBy.nominal} misses by only ${text(missedBy.short)}: with boards that measure full, or straight ones that need less for bow or planing, each square could come from one piece.`,
    )
  }
  if (nm(blank.length) < nm(input.allowances.minMachine)) {
    cautions.push(
      `At ${text(blank.length)} the blank is too short for jointer and planer (${text(input.allowances.minMachine)} at least; the machine maker's minimum comes first): plane longer strips and crosscut last.`,
    )
  }
  if (input.lathes.length > 0 && !blank.lathes.some((lathe) => lathe.fits)) {
    cautions.push(
      'It fits none of the shop’s lathes: make the part in two with a joint, or have it turned elsewhere.',
    )
  }
  return cautions
}
