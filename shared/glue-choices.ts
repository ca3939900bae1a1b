import { roughThickness } from './blank/nominal.ts'
import { blanksMissing } from './cutting/cut-blanks.ts'
import type { ShopRecord } from './estimate/record.ts'
import { type Plan, planJob } from './plan.ts'
import { stockOf } from './plan-parts.ts'
import type { OperationKind } from './route/kinds.ts'
import { nominals, type Shop, type ShopStock } from './shop.ts'
import { nm } from './units/length.ts'
import { minorDigits } from './units/money.ts'
import type { Species } from './wood/species.ts'

/** One way to come by the blanks: solid from stock of a thickness, or glued up of it. Money in currency units. */
export interface GlueChoice {
  nominal: ShopStock['nominal']
  surfaced?: boolean
  layers: number
  /** It is the plan’s own. */
  chosen: boolean
  /** It stands in the shop’s table of stock; else the yard has to be asked. */
  listed: boolean
  /** As the boards measure, and as the yard tallies them. */
  boardFeet: { bought: number; tallied: number }
  /** Blanks or layers that the yard’s usual boards do not yield. */
  unmet: number
  /** With the shop’s extra; absent without a price. */
  wood?: number
  /** Minutes of facing, gluing and truing for the batch, and what they cost. */
  gluing: { minutes: number; cost: number }
  /** Minutes of the whole batch, and what they cost with rest. */
  work: { minutes: number; cost: number }
  /** Wood and work; absent without a price of the wood. */
  cost?: number
  /** Days in which nothing can be done to the batch: strips at rest, glue that cures. */
  waitDays: number
  /** Glue lines that come out as feather edges in a neck or cove. */
  featheredNecks: number
  /** Where it has no price: per board foot it may cost so much before the plan’s own way is the cheaper. */
  paysTo?: number
}

/** Operations that only a glue-up has. */
const gluingKinds: ReadonlySet<OperationKind> = new Set<OperationKind>(['face-layers', 'glue', 'plane-blank'])

/** Thicknesses to look at: those of the shop’s table, and the thinnest beyond it that would do in one piece. */
function offersFor({ job, blank }: Plan, { stock }: Shop): { row: ShopStock; listed: boolean }[] {
  const listed = stockOf(job.species, stock)
  const rough = (row: { nominal: string }) => nm(roughThickness(row.nominal))
  const thick = nominals
    .filter((nominal) => !listed.some((row) => row.nominal === nominal))
    .map((nominal) => ({ species: job.species, nominal }))
    .filter(
      (row) => blank.layers > 1 && !job.profile.split && listed.every((other) => rough(other) < rough(row)),
    )
  return [...listed.map((row) => ({ row, listed: true })), ...thick.map((row) => ({ row, listed: false }))]
}

function choiceFrom(plan: Plan, shop: Shop, listed: boolean): GlueChoice | undefined {
  const { blank, cut, cutOrder, operations, time } = plan
  if (blank.nominal === undefined) return undefined
  const hourly = shop.labourPerHour * (1 + shop.restAllowance)
  const cost = (minutes: number) => (minutes / 60) * hourly
  const gluing = operations
    .filter(({ kind }) => gluingKinds.has(kind))
    .reduce((sum, { minutesOnce, minutesEach }) => sum + minutesOnce + minutesEach * blank.count, 0)
  const priced = cutOrder.boards.every(
    ({ price, pricePerBoardFoot }) => price !== undefined || pricePerBoardFoot !== undefined,
  )
  const wood = priced ? cut.cost * (1 + shop.extraWood) : undefined
  return {
    nominal: blank.nominal as ShopStock['nominal'],
    ...(blank.surfaced && { surfaced: true }),
    layers: blank.layers,
    chosen: false,
    listed,
    boardFeet: { bought: cut.boardFeetBought, tallied: cut.boardFeetTallied },
    unmet: blanksMissing(cut),
    ...(wood !== undefined && { wood, cost: wood + cost(time.minutes) }),
    gluing: { minutes: gluing, cost: cost(gluing) },
    work: { minutes: time.minutes, cost: cost(time.minutes) },
    waitDays: time.elapsed.waitDays,
    featheredNecks: blank.glueUp?.feathers.filter(({ neck }) => neck).length ?? 0,
  }
}

/** Price per board foot at which an offer costs what the plan’s own way does; absent where it never can. */
function paysTo(choice: GlueChoice, own: GlueChoice, shop: Shop): number | undefined {
  const boardFeet = choice.boardFeet[shop.priceBy === 'tally' ? 'tallied' : 'bought']
  if (own.cost === undefined || choice.wood !== undefined || boardFeet === 0 || choice.unmet > 0)
    return undefined
  const left = own.cost - choice.work.cost
  const price = left / (boardFeet * (1 + shop.extraWood))
  // down to whole minor units: a cent more and it is the dearer
  const digits = minorDigits(shop.currency)
  return left > 0 ? Math.floor(price * 10 ** digits) / 10 ** digits : undefined
}

/**
 * Solid from thick stock against glued up side by side: what each thickness the shop can get asks of wood, work and
 * waiting for the batch of a plan, all bought at the yard. Where nothing listed does in one piece, thicker stock is
 * looked at too, with the price up to which it pays. The cheapest first; those without a price after them. `record` are
 * the shop’s own times.
 */
export function glueChoices(plan: Plan, shop: Shop, woods: Species[], record?: ShopRecord): GlueChoice[] {
  const job = { ...plan.job, lumber: { ...plan.job.lumber, fromRack: false } }
  const found = new Map<string, GlueChoice>()
  for (const { row, listed } of offersFor(plan, shop)) {
    const choice = choiceFrom(planJob(job, { ...shop, stock: [row] }, woods, { record }), shop, listed)
    if (!choice || (!listed && choice.layers > 1)) continue
    found.set(`${choice.nominal} ${choice.surfaced ?? false}`, choice)
    if (!listed) break
  }
  const choices = [...found.values()]
  const own = choices.find(
    ({ nominal, surfaced }) => nominal === plan.blank.nominal && !!surfaced === !!plan.blank.surfaced,
  )
  const told = choices.map((choice): GlueChoice => {
    const most = own && choice !== own ? paysTo(choice, own, shop) : undefined
    return { ...choice, chosen: choice === own, ...(most !== undefined && { paysTo: most }) }
  })
  const rank = ({ cost, unmet }: GlueChoice) => (unmet > 0 ? 2 : cost === undefined ? 1 : 0)
  return told.sort(
    (a, b) => rank(a) - rank(b) || (a.cost ?? a.boardFeet.bought) - (b.cost ?? b.boardFeet.bought),
  )
}
