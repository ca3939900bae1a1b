import { readRecord } from '../../../shared/contract/record.ts'
import { readCutOrder } from '../../../shared/cutting/order.ts'
import { countsMoney } from '../../../shared/cutting/prices.ts'
import { readJob } from '../../../shared/job.ts'
import { matchSet } from '../../../shared/matching/match.ts'
import { readSetFile } from '../../../shared/matching/set-file.ts'
import { type Plan, planJob } from '../../../shared/plan.ts'
import { defaultShop, readShop, type Shop } from '../../../shared/shop.ts'
import { type LengthStyle, styleOf, type Units } from '../../../shared/units/length.ts'
import { exactCut } from '../../jobs/exact-cut.ts'
import { handbookWoods } from '../../woods.ts'
import type { Call } from '../command.ts'
import { readFile } from '../input.ts'
import { asJson, type Speech } from '../output.ts'
import { cutText } from '../text/cut.ts'
import { matchText } from '../text/match.ts'
import { planText } from '../text/plan.ts'

/** The settings of `--shop`, or the defaults; the database is never asked. */
async function shopFor({ shop, here }: Call): Promise<Shop> {
  return shop === undefined ? defaultShop : readShop(await readFile(shop, here))
}

/** How lengths are written: as asked for, else as the file has them. */
export const styleFor = ({ units }: Call, own: Units): LengthStyle => styleOf(units ?? own)

/** The plan of a job file in the shop of the call, with that shop and the wood’s own name. */
export async function planned(call: Call, file: string): Promise<{ plan: Plan; shop: Shop; wood?: string }> {
  const shop = await shopFor(call)
  const record = call.record === undefined ? undefined : readRecord(await readFile(call.record, call.here))
  const plan = planJob(readJob(await readFile(file, call.here)), shop, handbookWoods, { record })
  const wood = [...shop.species, ...handbookWoods].find(({ key }) => key === plan.job.species)?.name
  return { plan, shop, wood }
}

export async function plan(call: Call, { out }: Speech): Promise<void> {
  const { plan, wood } = await planned(call, call.operands[0]!)
  out(call.json ? asJson(plan) : planText(plan, { style: styleFor(call, plan.job.units), wood }))
}

/** With `--shop`, an order that leaves kerf and trims out takes the shop's. */
async function orderFor(call: Call): Promise<unknown> {
  const file = await readFile(call.operands[0]!, call.here)
  if (call.shop === undefined || typeof file !== 'object' || file === null || Array.isArray(file)) return file
  const { kerf, endTrim, edgeTrim, minOffcut, currency } = await shopFor(call)
  return { kerf, endTrim, edgeTrim, minOffcut, currency, ...file }
}

export async function cut(call: Call, { out }: Speech): Promise<void> {
  const order = readCutOrder(await orderFor(call))
  const cut = await exactCut(order, order.seconds * 1000)
  const text = {
    style: styleFor(call, order.units),
    currency: countsMoney(order) ? order.currency : undefined,
    boardsGiven: order.boards.length > 0,
  }
  out(call.json ? asJson(cut) : cutText(cut, text))
}

export async function match(call: Call, { out }: Speech): Promise<void> {
  if (call.shop !== undefined) await shopFor(call)
  const set = readSetFile(await readFile(call.operands[0]!, call.here))
  const match = matchSet(set)
  out(call.json ? asJson(match) : matchText(match, set, styleFor(call, set.units)))
}
