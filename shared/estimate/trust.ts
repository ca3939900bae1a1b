import type { Operation } from '../route/operation.ts'
import type { ShopRecord } from './record.ts'

/** How far an estimate stands on the shop's own times. */
export interface TimeTrust {
  /** Batches and times of the record that bear on the operations of this plan. */
  batches: number
  records: number
  /** Share of the minutes that is of kinds the shop has timed, 0 to 1. */
  share: number
  why: string
}

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`

const NOTHING =
  'No times of your own yet: these minutes rest on usual figures and on what is set for the shop. Log minutes at the rack and they become yours.'

function whyOf(batches: number, times: number, share: number): string {
  const from = `From ${batches} of your batches, ${counted(times, 'time')}`
  const rest = `they cover ${Math.round(share * 100)} % of the minutes`
  const others = share < 0.995 ? '; the others rest on usual figures, moved as your shop goes as a whole' : ''
  const few =
    batches < 3 ? ' So few batches move the figures a little only; each one logged makes them surer.' : ''
  return `${from}: ${rest}${others}.${few}`
}

/** How far the minutes of these operations, for `pieces` of them, stand on the shop's own times. */
export function trustIn(
  operations: readonly Pick<Operation, 'kind' | 'minutesOnce' | 'minutesEach'>[],
  pieces: number,
  record?: ShopRecord,
): TimeTrust {
  const kinds = [...new Set(operations.map(({ kind }) => kind))]
  const known = kinds.flatMap((kind) => record?.kinds[kind] ?? [])
  if (known.length === 0) return { batches: 0, records: 0, share: 0, why: NOTHING }
  const batches = Math.max(...known.map((kind) => kind.batches))
  const records = known.reduce((sum, { times, setAside }) => sum + times - setAside, 0)
  let [all, own] = [0, 0]
  for (const { kind, minutesOnce, minutesEach } of operations) {
    const minutes = minutesOnce + minutesEach * pieces
    all += minutes
    if (record?.kinds[kind]) own += minutes
  }
  const share = all > 0 ? own / all : 0
  return { batches, records, share, why: whyOf(batches, records, share) }
}
