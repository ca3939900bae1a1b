import { type Allowances, defaultAllowances } from './blank/allowances.ts'
import { type Blank, blankFor } from './blank/blank.ts'
import { blankBeam, stickWhip } from './blank/stick-whip.ts'
import type { CutOrder, CutPlan } from './cutting/board.ts'
import { cutBreaches } from './cutting/check.ts'
import { cutOrderFor } from './cutting/order-for-blank.ts'
import { quickCut } from './cutting/quick.ts'
import { type YardList, yardList } from './cutting/yard-list.ts'
import { timedOperations } from './estimate/minutes.ts'
import { type Quote, quoteOf } from './estimate/quote.ts'
import { type BatchTime, batchTime } from './estimate/time.ts'
import { waitsFor } from './estimate/waits.ts'
import type { Job } from './job.ts'
import { type CheckStation, checkStations } from './profile/check-stations.ts'
import { jointReach } from './profile/joint-reach.ts'
import { spansOf } from './profile/profile.ts'
import { type Solid, solidOf } from './profile/solid.ts'
import { standInCaution, woodOrStandIn } from './profile/stand-in-wood.ts'
import { type BarWood, type Whip, whipOf, whyNoWhip } from './profile/whip.ts'
import { cautionSentences } from './route/cautions.ts'
import { type Finishing, finishingOf } from './route/finishing.ts'
import type { Operation, Passes } from './route/operation.ts'
import { routeFor } from './route/route.ts'
import type { Shop, ShopStock } from './shop.ts'
import { type Calipers, calipersFor } from './turning/calipers.ts'
import { grindingFor, type ToolGrinding } from './turning/edge.ts'
import { styleOf } from './units/length.ts'
import { densityCautions, densityOf } from './wood/density.ts'
import { type Movement, movementOf, whyNoMovement } from './wood/movement.ts'
import { type Species, speciesKey, speciesNamed } from './wood/species.ts'

/** The finished part: lengths mm, areas mm², volume mm³, mass g, density kg/m³. */
export interface Part extends Solid {
  /** Absent, with what depends on it, where the wood has no specific gravity on record. */
  mass?: number
  density?: number
  whip?: Whip
  movement?: Movement
}

/** Something to mind, and what it is about. */
export interface Caution {
  about: 'job' | 'part' | 'checks' | 'blank' | 'lumber' | 'work' | 'finish' | 'price'
  text: string
}

export interface Sanding {
  grits: number[]
  minutesEach: number
  rpm?: number
  why: string
}

/** Everything worked out for a job before any wood is cut. */
export interface Plan {
  job: Job
  /** What held for this job: its own figures before the shop’s before the defaults. */
  allowances: Allowances
  part: Part
  checkStations: CheckStation[]
  blank: Blank
  cutOrder: CutOrder
  cut: CutPlan
  yard: YardList
  boardFeet: { blanks: number; bought: number; tallied: number }
  operations: Operation[]
  calipers: Calipers
  passes: Passes
  grinding: ToolGrinding[]
  sanding: Sanding
  finish: Finishing
  time: BatchTime
  quote?: Quote
  cautions: Caution[]
}

/** The species of a job: the shop’s own woods come before the handbook’s. */
export const speciesOf = (job: Job, shop: Shop, woods: Species[]): Species =>
  speciesNamed([...shop.species, ...woods], job.species)

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

function partOf(job: Job, species: Species): Part {
  const solid = solidOf(job.profile)
  const density = densityOf(species, job.moisture)
  const movement = movementOf(species, solid.maxDiameter, job.moisture, job.serviceMoisture)
  const wood = barWood(species, density)
  return {
    ...solid,
    ...(density !== undefined && { density, mass: solid.volume * density * 1e-6 }),
    ...(wood && { whip: whipOf(job.profile, wood) }),
    ...(movement && { movement }),
  }
}

const barWood = ({ moeGPa }: Species, density: number | undefined): BarWood | undefined =>
  moeGPa === undefined || density === undefined ? undefined : { moeGPa, density }

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

const stickOf = (job: Job, part: Part, parts: number, allowances: Allowances) => ({
  profile: job.profile,
  parts,
  partLength: part.length,
  between: allowances.between,
  diameter: part.maxDiameter,
})

function blankOf(job: Job, shop: Shop, part: Part, wood: BarWood): Blank {
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
    stock: stockOf(job.species, shop.stock),
    lathes: shop.lathes,
    confidence: shop.spareConfidence,
    record: shop.record,
    allowsStick: (parts) => stickWhip(stickOf(job, part, parts, allowances), wood).rest === 'none',
  })
}

function cutOrderOf(job: Job, shop: Shop, blank: Blank): CutOrder {
  const stock = stockOf(job.species, shop.stock).find(
    (row) => row.nominal === blank.nominal && !!row.surfaced === !!blank.surfaced,
  )
  const { kerf, endTrim, edgeTrim, minOffcut, priceBy, currency, yardBoards } = shop
  return cutOrderFor({
    units: job.units,
    blank,
    yardBoards,
    pricePerBoardFoot: stock?.pricePerBoardFoot,
    kerf,
    endTrim,
    edgeTrim,
    minOffcut,
    priceBy,
    currency,
  })
}

/**
 * The cut of an order, the quick one unless a better was found, gone over by the checker.
 * @throws Error when the checker finds anything: a plan that fails is never shown
 */
function checkedCut(order: CutOrder, better?: CutPlan): CutPlan {
  const cut = better ?? quickCut(order)
  const breaches = cutBreaches(order, cut)
  if (breaches.length > 0) throw new Error(`the cut plan fails its check: ${breaches[0]}`)
  return cut
}

const yardOf = (job: Job, shop: Shop, blank: Blank): YardList =>
  yardList({
    species: job.species,
    nominal: blank.nominal,
    thickness: blank.thickness,
    layerThickness: blank.layerThickness,
    sawn: blank.sawn,
    length: blank.length,
    count: blank.count * blank.layers,
    kerf: shop.kerf,
    endTrim: shop.endTrim,
    edgeTrim: shop.edgeTrim,
    grade: shop.grade,
    extra: shop.extraWood,
    yardBoards: shop.yardBoards,
  })

interface Ground {
  job: Job
  shop: Shop
  species: Species
  part: Part
  blank: Blank
  checks: CheckStation[]
  /** What safe speeds go by: the wood, or what stands in for it. */
  wood: BarWood
}

/** How what is on the lathe whips: the part, or the whole stick of several. */
function spunWhip({ job, shop, part, blank, wood }: Ground): Whip {
  const { perBlank } = blank.stock
  if (perBlank > 1) return stickWhip(stickOf(job, part, perBlank, allowancesOf(job, shop)), wood)
  return part.whip ?? whipOf(job.profile, wood)
}

function workOf(ground: Ground) {
  const { job, shop, species, blank, checks, wood } = ground
  const allowances = allowancesOf(job, shop)
  const whip = spunWhip(ground)
  const fitting = blank.lathes.find((lathe) => lathe.fits)?.name
  const { operations, ...route } = routeFor({
    ...job,
    checks,
    blank,
    allowances,
    lathe: shop.lathes.find((lathe) => lathe.name === fitting),
    tools: shop.tools,
    grits: shop.grits,
    calipers: shop.calipers,
    whip,
    blankCriticalRpm: blankBeam(blank, wood).criticalRpm,
  })
  const timed = timedOperations(operations, {
    hardnessN: species.hardnessN,
    minuteFactors: shop.minuteFactors,
  })
  return { operations: timed, whip, ...route }
}

/** Parts that come from all blanks, spares among them. */
export const partsOf = ({ blank, job }: Pick<Plan, 'blank' | 'job'>): number =>
  blank.count * blank.stock.perBlank * (job.profile.split ? 2 : 1)

const grindingOf = (
  shop: Shop,
  species: Species,
  operations: Operation[],
  blanks: number,
  pieces: number,
): ToolGrinding[] =>
  grindingFor({
    uses: operations
      .filter((o) => o.cut !== undefined)
      .map((o) => ({ tool: o.tool, cut: o.cut!, minutes: o.minutesEach * blanks })),
    tools: shop.tools,
    hardnessN: species.hardnessN,
    pieces,
    touchUpsPerRegrind: shop.touchUpsPerRegrind,
    touchUpMinutes: shop.touchUpMinutes,
    regrindMinutes: shop.regrindMinutes,
  })

/** All touch-ups and regrinds of the batch, as work among the rest. */
const sharpeningOf = (grinding: ToolGrinding[]) => ({
  stage: 'sharpening' as const,
  minutesOnce: grinding.reduce((sum, tool) => sum + tool.minutes, 0),
  minutesEach: 0,
  learns: false,
})

function sandingOf(shop: Shop, operations: Operation[]): Sanding {
  const sanding = operations.filter((o) => o.stage === 'sanding')
  const rpm = sanding.find((o) => o.rpm !== undefined)?.rpm
  return {
    grits: shop.grits,
    minutesEach: sanding.reduce((sum, o) => sum + o.minutesEach, 0),
    ...(rpm !== undefined && { rpm }),
    why: 'Slower than shaping, rest moved away, small pieces of paper and no cloth, a mask and the dust drawn off.',
  }
}

function quoteFor(
  job: Job,
  shop: Shop,
  plan: { part: Part; cutOrder: CutOrder; cut: CutPlan; time: BatchTime; made: number },
): Quote {
  const { part, cutOrder, cut, time, made } = plan
  const priced = cutOrder.boards.some(
    (board) => board.price !== undefined || board.pricePerBoardFoot !== undefined,
  )
  return quoteOf({
    currency: shop.currency,
    pieces: job.quantity,
    piecesMade: made,
    woodCost: priced ? cut.cost : undefined,
    extraWood: shop.extraWood,
    blanksUnmet: cut.unmet.reduce((sum, row) => sum + row.count, 0),
    minutes: time.minutes,
    restAllowance: shop.restAllowance,
    labourPerHour: shop.labourPerHour,
    abrasivePerPiece: shop.abrasivePerPiece,
    finishPerSquareMetre: shop.finishPerSquareMetre,
    // A part that is split is finished as halves, so each has half of the pair’s surface.
    surfaceFinished: job.finish === 'none' ? 0 : part.surface / (job.profile.split ? 2 : 1),
    marginOnCost: shop.marginOnCost,
    minimumCharge: shop.minimumCharge,
  })
}

function cautionsOf(plan: Omit<Plan, 'cautions'>, species: Species, whip: Whip): Caution[] {
  const { job, part, checkStations: checks, blank, cut, yard, operations, finish, quote } = plan
  const about = (what: Caution['about'], texts: (string | undefined)[]): Caution[] =>
    [...new Set(texts)].flatMap((text) => (text ? [{ about: what, text }] : []))
  const unread = job.unread.map(
    (field) => `The job file’s field ${field} is not known here and was left aside.`,
  )
  const rest = whip.rest === 'none' ? undefined : `A steady rest is ${whip.rest}: ${whip.why}.`
  const short = cut.unmet.map((row) => `${row.count} of ${row.key} cannot be cut from these boards.`)
  return [
    ...about('job', [...unread, ...speciesCautions(species)]),
    ...about('part', [
      ...densityCautions(species, job.moisture),
      whyNoWhip(species, part.density),
      whyNoMovement(species, job.moisture, job.serviceMoisture),
      rest,
      job.profile.split
        ? 'Volume, mass and surface are those of the glued pair as it is turned; a half has half its volume and mass.'
        : undefined,
    ]),
    ...about(
      'checks',
      checks.map((check) => check.caution && `${check.name ?? check.key}: ${check.caution}`),
    ),
    ...about('blank', blank.cautions),
    ...about('lumber', [...short, ...yard.notes]),
    ...about('work', [
      standInCaution({ ...species, density: part.density }, species.name, job.moisture),
      ...operations.flatMap((operation) => cautionSentences(operation.caution)),
    ]),
    ...about('finish', [finish.caution]),
    ...about('price', quote?.cautions ?? []),
  ]
}

const speciesCautions = (species: Species): string[] =>
  species.safe
    ? []
    : [
        `Some figures for ${species.name} stand on memory or are missing (${species.fieldConfidence ?? species.confidence}).`,
      ]

/**
 * The plan of a job in a shop, from the profile to the price: lengths mm, minutes, rpm, money in currency units.
 * Same input, same plan; quick enough to follow every change of a drawing. `better` is a cut of the plan’s own
 * order that a longer search found; it takes the place of the quick one. The plan’s job has its wood by its key.
 * @throws Problem `bad-input` when the species is not known, with the nearest names
 */
export function planJob(asked: Job, shop: Shop, woods: Species[], better?: CutPlan): Plan {
  const species = speciesOf(asked, shop, woods)
  const job = { ...asked, species: species.key }
  const part = partOf(job, species)
  const checks = checkStations(
    job.profile,
    { ...job.tolerance, style: styleOf(job.units) },
    job.instrument.jawWidth,
  )
  const wood = woodOrStandIn({ ...species, density: part.density }, job.moisture)
  const blank = blankOf(job, shop, part, wood)
  const cutOrder = cutOrderOf(job, shop, blank)
  const cut = checkedCut(cutOrder, better)
  const { operations, passes, places, slender, whip } = workOf({
    job,
    shop,
    species,
    part,
    blank,
    checks,
    wood,
  })
  const finish = finishingOf(job.finish)
  const made = partsOf({ blank, job })
  const grinding = grindingOf(shop, species, operations, blank.count, made)
  const time = batchTime({
    operations: [...operations, sharpeningOf(grinding)],
    pieces: made,
    wanted: job.quantity,
    perBlank: made / blank.count,
    learningRate: shop.learningRate,
    restAllowance: shop.restAllowance,
    hoursPerDay: shop.hoursPerDay,
    spread: shop.timeSpread,
    waits: waitsFor(
      operations.map((o) => o.kind),
      finish,
    ),
  })
  const plan: Omit<Plan, 'cautions'> = {
    job,
    allowances: allowancesOf(job, shop),
    part,
    checkStations: checks,
    blank,
    cutOrder,
    cut,
    yard: yardOf(job, shop, blank),
    boardFeet: { blanks: cut.boardFeetInBlanks, bought: cut.boardFeetBought, tallied: cut.boardFeetTallied },
    operations,
    // Slender work is sized in one fixed order, so there and back is not to be had.
    calipers: calipersFor({ places, pieces: blank.count, calipers: shop.calipers, oneWay: slender }),
    passes,
    grinding,
    sanding: sandingOf(shop, operations),
    finish,
    time,
    quote: quoteFor(job, shop, { part, cutOrder, cut, time, made }),
  }
  return { ...plan, cautions: cautionsOf(plan, species, whip) }
}
