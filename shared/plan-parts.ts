import { type Allowances, defaultAllowances } from './blank/allowances.ts'
import { type Blank, blankFor } from './blank/blank.ts'
import { stickWhip } from './blank/stick-whip.ts'
import type { StockMoisture } from './blank/wet-stock.ts'
import type { CutOrder, CutPlan } from './cutting/board.ts'
import { cutBreaches } from './cutting/check.ts'
import { blanksMissing } from './cutting/cut-blanks.ts'
import { blanksToBuy, boardsFor, woodWorth } from './cutting/on-hand.ts'
import { cutOrderFor } from './cutting/order-for-blank.ts'
import { quickCut } from './cutting/quick.ts'
import { riftPlaces } from './cutting/rift-places.ts'
import { keptTogether } from './cutting/same-board.ts'
import type { StockBoard } from './cutting/stock-board.ts'
import { type YardList, yardList } from './cutting/yard-list.ts'
import { pricePerNetFoot } from './cutting/yard-terms.ts'
import { type Quote, quoteOf } from './estimate/quote.ts'
import type { BatchTime } from './estimate/time.ts'
import type { Job } from './job.ts'
import { jointReach } from './profile/joint-reach.ts'
import { isHanded } from './profile/mirrored-joints.ts'
import { ofOnePiece, type Part, partOf } from './profile/part.ts'
import { spansOf } from './profile/profile.ts'
import { type Stair, stairOf } from './profile/stair.ts'
import type { BarWood } from './profile/whip.ts'
import type { Operation, Passes } from './route/operation.ts'
import type { Shop, ShopStock } from './shop.ts'
import { grindingFor, type ToolGrinding } from './turning/edge.ts'
import { rimSpeed } from './turning/speed.ts'
import { styleOf } from './units/length.ts'
import { sawnMoisture } from './wood/green-moisture.ts'
import { type Species, speciesKey } from './wood/species.ts'
import { yardInputOf } from './yard-input.ts'

export interface Sanding {
  grits: number[]
  minutesEach: number
  rpm?: number
  why: string
}

/** What holds for this job: its own figures before the shop’s before the defaults. */
export const allowancesOf = (job: Job, shop: Shop): Allowances => ({
  ...defaultAllowances(job.units),
  ...shop.allowances,
  ...job.allowances,
})

/** Rows of the shop’s stock table for a wood by its key; those for every wood where it has none of its own. */
export function stockOf(species: string, stock: ShopStock[]): ShopStock[] {
  const own = stock.filter((row) => speciesKey(row.species) === species)
  return own.length > 0 ? own : stock.filter((row) => row.species === '*')
}

/** The same with the usual yard’s prices for the job’s grade, where its list has them. */
function pricedStockOf({ species, lumber }: Job, { stock, yards: [yard], grade: usual }: Shop): ShopStock[] {
  return stockOf(species, stock).map((row) => {
    const sort = {
      species,
      nominal: row.nominal,
      grade: lumber.grade ?? usual,
      surfaced: row.surfaced === true,
    }
    const listed = yard && pricePerNetFoot(yard, sort)
    return listed === undefined ? row : { ...row, pricePerBoardFoot: listed }
  })
}

/** The finished part of a job, of the lot it names where the shop has that. */
export function jobPart({ lot: named, ...job }: Job, shop: Shop, species: Species): Part {
  const lot = shop.lots.find(({ name }) => name === named)
  return partOf({ ...job, species, ...(lot && { lot }) })
}

/** Spacing and strength of stair parts; absent for furniture, and for halves, whose figures would be those of the pair. */
export function jobStair(job: Job, species: Species): Stair | undefined {
  const { use, profile, joints, quantity, tolerance, serviceMoisture } = job
  if (use === 'furniture' || profile.split) return undefined
  return stairOf({
    profile,
    joints,
    use,
    quantity,
    tolerance: tolerance.diameter,
    wishes: job.stair ?? {},
    wood: { ...species, serviceMoisture },
    style: styleOf(job.units),
  })
}

/** What both ends of the part look like to whoever saws the blank. */
function endsOf(job: Job): Parameters<typeof blankFor>[0]['ends'] {
  const spans = spansOf(job.profile)
  const [first, last] = [spans[0]!, spans.at(-1)!]
  return {
    foot: {
      square: first.shape === 'square',
      diameter: first.d0,
      trimLater: job.profile.stations[0]!.trimLater,
    },
    top: {
      square: last.shape === 'square',
      diameter: last.d1,
      trimLater: job.profile.stations.at(-1)!.trimLater,
    },
  }
}

export const stickOf = (job: Job, part: Part, parts: number, allowances: Allowances) => ({
  profile: job.profile,
  parts,
  partLength: part.length,
  between: allowances.between,
  diameter: part.maxDiameter,
})

/** Moisture of the wood on its way: as sawn, when it is turned, in use, % MC; and the air it stands in. */
export function moistureOf(job: Job, shop: Shop, species: Species): StockMoisture {
  const { moisture: sawn, by: sawnBy } = sawnMoisture({ ...job, species: species.key })
  return {
    species,
    sawn,
    sawnBy,
    turned: job.moisture,
    inUse: job.serviceMoisture,
    dryness: job.lumber.dryness,
    ...(shop.air && { air: shop.air }),
  }
}

export function blankOf(job: Job, shop: Shop, part: Part, wood: BarWood, species: Species): Blank {
  const allowances = allowancesOf(job, shop)
  const spans = spansOf(job.profile)
  return blankFor({
    units: job.units,
    part,
    ends: endsOf(job),
    joints: job.joints.map((joint) => jointReach(joint, spans)),
    mount: job.mount,
    perBlank: job.perBlank,
    quantity: job.quantity,
    match: job.match,
    split: job.profile.split,
    allowances,
    density: part.density,
    moisture: moistureOf(job, shop, species),
    spans,
    stock: pricedStockOf(job, shop),
    lathes: shop.lathes,
    confidence: shop.spareConfidence,
    record: shop.record,
    allowsStick: (parts) => stickWhip(stickOf(job, part, parts, allowances), wood).rest === 'none',
  })
}

/** What the yard takes for the stock of the blank, per board foot; absent where the shop has no price. */
export const yardPriceOf = (job: Job, shop: Shop, blank: Blank): number | undefined =>
  pricedStockOf(job, shop).find((row) => row.nominal === blank.nominal && !!row.surfaced === !!blank.surfaced)
    ?.pricePerBoardFoot

export function cutOrderOf(job: Job, shop: Shop, blank: Blank, rack: readonly StockBoard[]): CutOrder {
  const { kerf, endTrim, edgeTrim, minOffcut, priceBy, currency, yardBoards } = shop
  return cutOrderFor({
    units: job.units,
    blank,
    onHand: boardsFor(job, rack),
    yardBoards,
    pricePerBoardFoot: yardPriceOf(job, shop, blank),
    kerf,
    endTrim,
    edgeTrim,
    minOffcut,
    priceBy,
    currency,
  })
}

/**
 * The cut of an order, the quick one unless a better was found: blanks that belong together from one board where it
 * costs nothing or the job insists, strips where the rings look best where it asks; gone over by the checker.
 * @throws Error when the checker finds anything: a plan that fails is never shown
 */
export function checkedCut(
  { grain, lumber }: Pick<Job, 'grain' | 'lumber'>,
  layers: number,
  order: CutOrder,
  better?: CutPlan,
): CutPlan {
  const kept = keptTogether(order, better ?? quickCut(order), { layers, insist: lumber.oneBoard })
  const cut = grain === 'rift' ? riftPlaces(order, kept) : kept
  const breaches = cutBreaches(order, cut)
  if (breaches.length > 0) throw new Error(`the cut plan fails its check: ${breaches[0]}`)
  return cut
}

/** What to ask the yard for: the blanks that boards on hand do not yield. */
export const yardOf = (
  job: Job,
  shop: Shop,
  species: Species,
  { blank, cutOrder, cut }: { blank: Blank; cutOrder: CutOrder; cut: CutPlan },
): YardList =>
  yardList(
    yardInputOf(job, shop, species, {
      blank,
      pieces: blanksToBuy(cutOrder, cut),
      price: yardPriceOf(job, shop, blank),
    }),
  )

export const grindingOf = (
  shop: Shop,
  species: Species,
  operations: Operation[],
  blanks: number,
  pieces: number,
): ToolGrinding[] =>
  grindingFor({
    uses: operations
      .filter((o) => o.cut !== undefined)
      .map(({ tool, cut, minutesEach, rpm, work }) => ({
        tool,
        cut: cut!,
        minutes: minutesEach * blanks,
        ...(rpm !== undefined && work.diameter > 0 && { rim: rimSpeed(work.diameter, rpm) }),
      })),
    tools: shop.tools,
    hardnessN: species.hardnessN,
    pieces,
    touchUpsPerRegrind: shop.touchUpsPerRegrind,
    touchUpMinutes: shop.touchUpMinutes,
    regrindMinutes: shop.regrindMinutes,
  })

/** All touch-ups and regrinds of the batch, as work among the rest. */
export const sharpeningOf = (grinding: ToolGrinding[]) => ({
  stage: 'sharpening' as const,
  minutesOnce: grinding.reduce((sum, tool) => sum + tool.minutes, 0),
  minutesEach: 0,
  learns: false,
})

/** Keys of the operations of each mounting, in turn. */
export const mountingsOf = (operations: readonly Operation[]): string[][] =>
  [...new Set(operations.map(({ pass }) => pass))].map((pass) =>
    operations.filter((operation) => operation.pass === pass).map(({ key }) => key),
  )

/** Speeds, rests and calipers set over the batch, as work among the rest. */
export const changesOf = ({ changes = 0 }: Passes) => ({
  stage: 'set-up' as const,
  minutesOnce: changes,
  minutesEach: 0,
  learns: false,
})

export function sandingOf(shop: Shop, operations: Operation[]): Sanding {
  const sanding = operations.filter((o) => o.stage === 'sanding')
  const rpm = sanding.find((o) => o.rpm !== undefined)?.rpm
  return {
    grits: shop.grits,
    minutesEach: sanding.reduce((sum, o) => sum + o.minutesEach, 0),
    ...(rpm !== undefined && { rpm }),
    why: 'Slower than shaping, rest moved away, small pieces of paper and no cloth, a mask and the dust drawn off.',
  }
}

export function quoteFor(
  job: Job,
  shop: Shop,
  plan: { part: Part; blank: Blank; cutOrder: CutOrder; cut: CutPlan; time: BatchTime; made: number },
): Quote {
  const { part, blank, cutOrder, cut, time, made } = plan
  return quoteOf({
    currency: shop.currency,
    pieces: job.quantity,
    piecesMade: made,
    woodCost: woodWorth(cutOrder, cut, yardPriceOf(job, shop, blank)),
    fromHand: cut.boards.some(({ onHand }) => onHand),
    extraWood: shop.extraWood,
    blanksUnmet: blanksMissing(cut),
    minutes: time.minutes,
    restAllowance: shop.restAllowance,
    labourPerHour: shop.labourPerHour,
    abrasivePerPiece: shop.abrasivePerPiece,
    finishPerSquareMetre: shop.finishPerSquareMetre,
    // A part that is split is finished as halves, so each has half of the pair’s surface.
    surfaceFinished: job.finish === 'none' ? 0 : ofOnePiece(part.surface, job.profile),
    marginOnCost: shop.marginOnCost,
    minimumCharge: shop.minimumCharge,
  })
}

/** What is to be minded about pairs: an odd one out, hands that do not differ. */
export function handCautions({ mirrored, quantity, joints }: Job): string[] {
  if (!mirrored) return []
  return [
    quantity % 2 === 1
      ? `Mirrored pairs of ${quantity}: one left hand more than right hands, and no pair is whole with it.`
      : undefined,
    isHanded(joints)
      ? 'Odd numbers are left hands, as drawn, even numbers right hands with faces B and D changed about; a spare stands in only for its own hand once its joints are cut.'
      : 'No joint tells left from right here: a turn about the axis makes both hands alike.',
  ].filter((text) => text !== undefined)
}

/** What is to be minded about the lot a job names. */
export function lotCautions({ lot }: Job, part: Part): string[] {
  if (lot === undefined) return []
  return part.lot?.cautions ?? [`The shop has no lot called ${lot}: the table’s density holds.`]
}

/** What is to be minded about stair parts, and why there are no figures. */
export function stairCautions({ job, stair }: { job: Job; stair?: Stair }): string[] {
  if (stair) return stair.cautions
  if (job.use !== 'furniture')
    return ['No stair figures are had for a part that is split: they would be those of the glued pair.']
  return job.stair
    ? ['What is said of the stair is left aside: the job’s use is furniture, neither stair nor guard.']
    : []
}
