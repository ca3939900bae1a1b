import type { Allowances } from './blank/allowances.ts'
import type { Blank } from './blank/blank.ts'
import { lostBothWays } from './blank/shrinkage.ts'
import { blankBeam, stickWhip } from './blank/stick-whip.ts'
import type { CutOrder, CutPlan } from './cutting/board.ts'
import { onHandCautions, solidCaution } from './cutting/on-hand.ts'
import type { Together } from './cutting/same-board.ts'
import { type CuttingSheet, cuttingSheet } from './cutting/sheet.ts'
import type { StockBoard } from './cutting/stock-board.ts'
import type { YardList } from './cutting/yard-list.ts'
import { timedOperations } from './estimate/minutes.ts'
import type { Quote } from './estimate/quote.ts'
import { learnedFactors, type ShopRecord } from './estimate/record.ts'
import { usualStrays } from './estimate/record-strays.ts'
import { type BatchTime, batchTime, type Wait } from './estimate/time.ts'
import { type TimeTrust, trustIn } from './estimate/trust.ts'
import { waitsFor } from './estimate/waits.ts'
import type { Job } from './job.ts'
import {
  allowancesOf,
  blankOf,
  changesOf,
  checkedCut,
  cutOrderOf,
  grindingOf,
  handCautions,
  jobPart,
  jobStair,
  lotCautions,
  mountingsOf,
  quoteFor,
  type Sanding,
  sandingOf,
  sharpeningOf,
  stairCautions,
  stickOf,
  yardOf,
} from './plan-parts.ts'
import { type CheckStation, checkStations } from './profile/check-stations.ts'
import type { Part } from './profile/part.ts'
import type { Stair } from './profile/stair.ts'
import { standInCaution, woodOrStandIn } from './profile/stand-in-wood.ts'
import { type BarWood, type Whip, whipOf, whyNoWhip } from './profile/whip.ts'
import { cautionSentences } from './route/cautions.ts'
import { type Finishing, finishingOf } from './route/finishing.ts'
import { type LatheChoice, latheFor } from './route/lathe-choice.ts'
import type { Operation, Passes } from './route/operation.ts'
import { defaultPassCosts } from './route/passes.ts'
import { restMoves, speedChanges } from './route/rest-moves.ts'
import { routeFor } from './route/route.ts'
import type { Shop } from './shop.ts'
import { type Calipers, calipersFor } from './turning/calipers.ts'
import type { ToolGrinding } from './turning/edge.ts'
import { styleOf } from './units/length.ts'
import { densityCautions } from './wood/density.ts'
import { sawnMoisture } from './wood/green-moisture.ts'
import { whyNoMovement } from './wood/movement.ts'
import { type Species, speciesNamed } from './wood/species.ts'

/** Everything worked out for a job before any wood is cut. */
export interface Plan {
  job: Job
  /** What held for this job: its own figures before the shop’s before the defaults. */
  allowances: Allowances
  part: Part
  /** Spacing and strength of stair parts; absent for furniture and for halves of a split part. */
  stair?: Stair
  checkStations: CheckStation[]
  blank: Blank
  cutOrder: CutOrder
  cut: CutPlan
  yard: YardList
  /** `onHand`: cut from boards on hand; absent when there are none to cut from. */
  boardFeet: { blanks: number; bought: number; tallied: number; onHand?: number }
  operations: Operation[]
  /** Absent where none of the shop takes the blank, and in plans frozen before it was told. */
  lathe?: PlanLathe
  calipers: Calipers
  passes: Passes
  grinding: ToolGrinding[]
  sanding: Sanding
  finish: Finishing
  /** `trust`: how far it stands on the shop’s own times; plans frozen before shops had a record lack it. */
  time: BatchTime & { trust?: TimeTrust }
  /** What must be waited for, in order; absent from plans frozen before it was kept. */
  waits?: Wait[]
  quote?: Quote
  cautions: Caution[]
}

/** The lathe of a plan, and how often its tool rest is moved and another speed set for one blank. */
interface PlanLathe extends LatheChoice {
  restMoves: number
  speedChanges: number
}

/** The species of a job: the shop’s own woods come before the handbook’s. */
export const speciesOf = (job: Job, shop: Shop, woods: Species[]): Species =>
  speciesNamed([...shop.species, ...woods], job.species)

/** What belongs together of a plan’s blanks. Plans frozen before jobs told of their lumber insist on nothing. */
export const togetherOf = ({ job, blank }: Pick<Plan, 'job' | 'blank'>): Together => ({
  layers: blank.layers,
  insist: (job as Partial<Job>).lumber?.oneBoard ?? false,
})

/** Moisture a plan’s blanks are sawn at, % MC. Plans frozen before jobs told of their lumber say it with the shrinkage. */
export const sawnAt = ({ job, blank }: Pick<Plan, 'job' | 'blank'>): number =>
  blank.shrinkage?.from ?? sawnMoisture(job).moisture

/** Whether the pieces are legs that stand in sets: a matching set, whole, one to a blank, for no stair. */
export const standsInSets = ({ job, blank }: Pick<Plan, 'job' | 'blank'>): boolean =>
  job.match && job.quantity > 1 && !job.profile.split && blank.stock.perBlank === 1 && job.use === 'furniture'

/** Something to mind, and what it is about. */
export interface Caution {
  about: 'job' | 'part' | 'stair' | 'checks' | 'blank' | 'lumber' | 'work' | 'finish' | 'price'
  text: string
}

interface Ground {
  job: Job
  shop: Shop
  species: Species
  part: Part
  blank: Blank
  checks: CheckStation[]
  /** What safe speeds go by: the wood, or what stands in for it. */
  wood: BarWood
  /** The shop's own times. */
  record?: ShopRecord | undefined
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
  const dries = lostBothWays(species, job.moisture, job.serviceMoisture)
  const input = {
    ...job,
    ...(dries && { dries }),
    sawnMoisture: sawnMoisture(job).moisture,
    ...(species.hardnessN !== undefined && { hardnessN: species.hardnessN }),
    checks,
    blank,
    allowances,
    tools: shop.tools,
    grits: shop.grits,
    calipers: shop.calipers,
    costs: shop.changes,
    gaugeMinutes: shop.gaugeMinutes,
    whip,
    blankCriticalRpm: blankBeam(blank, wood).criticalRpm,
  }
  const lathe = latheFor(input, shop.lathes, blank.lathes)
  const { operations, ...route } = routeFor({
    ...input,
    lathe: shop.lathes.find(({ name }) => name === lathe?.name),
  })
  const timed = timedOperations(operations, {
    hardnessN: species.hardnessN,
    minuteFactors: learnedFactors(shop.minuteFactors, ground.record),
  })
  return { operations: timed, whip, lathe, ...route }
}

/** Parts that come from all blanks, spares among them. */
export const partsOf = ({ blank, job }: Pick<Plan, 'blank' | 'job'>): number =>
  blank.count * blank.stock.perBlank * (job.profile.split ? 2 : 1)

/** The cut of a plan with its pieces numbered as the batch numbers them. */
export const sheetOf = ({
  blank,
  job,
  cut,
  cutOrder,
}: Pick<Plan, 'blank' | 'job' | 'cut' | 'cutOrder'>): CuttingSheet =>
  cuttingSheet(
    cut,
    cutOrder.blanks.map(({ key }) => ({
      key,
      layers: blank.layers,
      pieces: partsOf({ blank, job }) / blank.count,
    })),
  )

function cautionsOf(
  plan: Omit<Plan, 'cautions'>,
  { species, whip, rack }: { species: Species; whip: Whip; rack: readonly StockBoard[] },
): Caution[] {
  const { job, part, checkStations: checks, blank, cut, yard, operations, finish, quote } = plan
  const about = (what: Caution['about'], texts: (string | undefined)[]): Caution[] =>
    [...new Set(texts)].flatMap((text) => (text ? [{ about: what, text }] : []))
  const sawnFrom = { species: species.name, moisture: sawnMoisture(job).moisture }
  const unread = job.unread.map(
    (field) => `The job file’s field ${field} is not known here and was left aside.`,
  )
  const rest = whip.rest === 'none' ? undefined : `A steady rest is ${whip.rest}: ${whip.why}.`
  const manyBoards =
    job.lumber.oneBoard && cut.boards.length > 1
      ? `All from one board is wished for, but no board of the list yields every blank: they come from ${cut.boards.length}.`
      : undefined
  const short = cut.unmet.map((row) => `${row.count} of ${row.key} cannot be cut from these boards.`)
  return [
    ...about('job', [...unread, ...speciesCautions(species), ...handCautions(job)]),
    ...about('part', [
      ...densityCautions(species, job.moisture),
      ...lotCautions(job, part),
      whyNoWhip(species, part.density),
      whyNoMovement(species, job.moisture, job.serviceMoisture),
      rest,
      job.profile.split
        ? 'Volume, mass and surface are those of the glued pair as it is turned; a half has half its volume and mass.'
        : undefined,
    ]),
    ...about('stair', stairCautions(plan)),
    ...about(
      'checks',
      checks.map((check) => check.caution && `${check.name ?? check.key}: ${check.caution}`),
    ),
    ...about('blank', blank.cautions),
    ...about('lumber', [
      ...short,
      manyBoards,
      ...onHandCautions(cut, rack, sawnFrom),
      job.profile.split ? undefined : solidCaution(plan.cutOrder, blank),
      ...(yard.boardFeet.net > 0 ? yard.notes : []),
    ]),
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
 * Same input, same plan; quick enough to follow every change of a drawing. `onHand` are the free boards of the rack,
 * `record` the shop’s own times.
 * `better` is a cut of the plan’s own order that a longer search found; it takes the place of the quick one. The
 * plan’s job has its wood by its key.
 * @throws Problem `bad-input` when the species is not known, with the nearest names
 */
export function planJob(
  asked: Job,
  shop: Shop,
  woods: Species[],
  {
    onHand: rack = [],
    better,
    record,
  }: { onHand?: readonly StockBoard[]; better?: CutPlan; record?: ShopRecord | undefined } = {},
): Plan {
  const species = speciesOf(asked, shop, woods)
  const job = { ...asked, species: species.key }
  const part = jobPart(job, shop, species)
  const stair = jobStair(job, species)
  const checks = checkStations(
    job.profile,
    { ...job.tolerance, style: styleOf(job.units) },
    job.instrument.jawWidth,
  )
  const wood = woodOrStandIn({ ...species, density: part.density }, job.moisture)
  const blank = blankOf(job, shop, part, wood, species)
  const cutOrder = cutOrderOf(job, shop, blank, rack)
  const sawn = checkedCut(job, blank.layers, cutOrder, better)
  const cut = { ...sawn, boards: sheetOf({ blank, job, cut: sawn, cutOrder }).boards }
  const { operations, lathe, passes, places, stripsDry, whip } = workOf({
    job,
    shop,
    species,
    part,
    blank,
    checks,
    wood,
    record,
  })
  const finish = finishingOf(job.finish)
  const made = partsOf({ blank, job })
  const grinding = grindingOf(shop, species, operations, blank.count, made)
  const waits = waitsFor(
    operations.map((o) => o.kind),
    finish,
    stripsDry,
  )
  const time = batchTime({
    operations: [...operations, sharpeningOf(grinding), changesOf(passes)],
    pieces: made,
    wanted: job.quantity,
    perBlank: made / blank.count,
    learningRate: shop.learningRate,
    learningForm: shop.learningForm,
    restAllowance: shop.restAllowance,
    hoursPerDay: shop.hoursPerDay,
    spread: record?.spread.common ?? shop.timeSpread,
    strays: record?.spread ?? usualStrays,
    waits,
  })
  const plan: Omit<Plan, 'cautions'> = {
    job,
    allowances: allowancesOf(job, shop),
    part,
    ...(stair && { stair }),
    checkStations: checks,
    blank,
    cutOrder,
    cut,
    yard: yardOf(job, shop, species, { blank, cutOrder, cut }),
    boardFeet: {
      blanks: cut.boardFeetInBlanks,
      bought: cut.boardFeetBought,
      tallied: cut.boardFeetTallied,
      ...(cut.boardFeetOnHand !== undefined && { onHand: cut.boardFeetOnHand }),
    },
    operations,
    ...(lathe && {
      lathe: { ...lathe, restMoves: restMoves(operations), speedChanges: speedChanges(operations) },
    }),
    calipers: calipersFor({
      places,
      pieces: blank.count,
      calipers: shop.calipers,
      mountings: mountingsOf(operations),
      minutes: { reset: shop.changes.reset ?? defaultPassCosts.reset, gauge: shop.gaugeMinutes },
    }),
    passes,
    grinding,
    sanding: sandingOf(shop, operations),
    finish,
    time: { ...time, trust: trustIn(operations, blank.count, record) },
    waits,
    quote: quoteFor(job, shop, { part, blank, cutOrder, cut, time, made }),
  }
  return { ...plan, cautions: cautionsOf(plan, { species, whip, rack }) }
}
