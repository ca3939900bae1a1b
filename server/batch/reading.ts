import type { NewReading } from '../../shared/contract/reading.ts'
import { moments } from '../../shared/matching/moments.ts'
import { type Limits, type ReadingKind, stageTarget, verdictOf } from '../../shared/matching/reading.ts'
import type { StoredReading } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import { type Breach, badInput } from '../../shared/problem.ts'
import type { CheckStation } from '../../shared/profile/check-stations.ts'
import type { Context } from '../context.ts'
import { inTransaction } from '../storage/database.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { pieceList } from '../storage/read/pieces.ts'
import { insertReading } from '../storage/write/readings.ts'
import { once } from '../storage/write/used-keys.ts'
import { startedPlan } from './find.ts'
import { inUtc, refuseTakenBack } from './step.ts'

/** What a reading is held against: the target of its stage and how far it may be off; lengths mm. */
function limitsOf(
  plan: Plan,
  station: CheckStation,
  { kind, stage }: { kind: ReadingKind } & Pick<NewReading, 'stage'>,
): Limits {
  const { tolerance } = plan.job
  if (kind === 'position') return { target: station.at, plus: tolerance.position, minus: tolerance.position }
  if (kind === 'length') return { target: plan.part.length, plus: tolerance.length, minus: tolerance.length }
  const measured = { kind, tenon: station.tenon, film: plan.job.finish === 'film' }
  const target = stageTarget(station.target, stage, plan.allowances, measured)
  return { target, plus: station.plus, minus: station.minus }
}

interface Held {
  plan: Plan
  numbers: Map<string, number>
  path: string
}

function breachesOf(reading: NewReading, { plan, numbers, path }: Held): Breach[] {
  const read = (value: unknown) => `read ${JSON.stringify(value)}`
  const breaches: Breach[] = []
  const ids = [...numbers.keys()]
  if (!numbers.has(reading.piece))
    breaches.push({
      path: `${path}piece`,
      message: `is no piece of this job; its pieces are ${ids[0]} to ${ids.at(-1)}; ${read(reading.piece)}`,
    })
  const stations = plan.checkStations.map((station) => station.key)
  const station = plan.checkStations.find(({ key }) => key === reading.station)
  if (!station)
    breaches.push({
      path: `${path}station`,
      message: `is no check station of this job; they are ${stations.join(', ') || 'none'}; ${read(reading.station)}`,
    })
  const kinds = [station?.kind, 'position', 'length']
  if (station && reading.kind && !kinds.includes(reading.kind))
    breaches.push({
      path: `${path}kind`,
      message: `must be ${kinds.join(', ')} at station ${station.key}; ${read(reading.kind)}`,
    })
  return breaches
}

/** The reading as it is stored: the mean of its values, their range as the out-of-round, its verdict. */
function judged(reading: NewReading, { plan, numbers }: Held, now: string): StoredReading {
  const { key, piece, stage, by, instrument } = reading
  const station = plan.checkStations.find((known) => known.key === reading.station)!
  const kind = reading.kind ?? station.kind
  const values = reading.values ?? [reading.value!]
  const value = moments(values).mean
  const limits = limitsOf(plan, station, { kind, stage })
  return {
    key,
    piece,
    number: numbers.get(piece)!,
    station: station.key,
    kind,
    stage,
    value,
    values,
    ...(values.length > 1 ? { outOfRound: Math.max(...values) - Math.min(...values) } : {}),
    target: limits.target,
    verdict: verdictOf(value, limits),
    at: inUtc(reading.at ?? now),
    ...(by === undefined ? {} : { by }),
    ...(instrument === undefined ? {} : { instrument }),
  }
}

/**
 * Judges and stores readings of a job's pieces, all of them or none, each once for its key; an earlier
 * reading of the same place stays as history.
 * @throws Problem when a piece or station is not of this job, a reading was taken back, or a key was used otherwise
 */
export async function logReadings(
  context: Context,
  job: StoredJob,
  readings: NewReading[],
  isList: boolean,
): Promise<StoredReading[]> {
  const { plan } = await startedPlan(context, job)
  const numbers = new Map((await pieceList(context.db, job.id)).map(({ id, number }) => [id, number]))
  const held = (i: number): Held => ({ plan, numbers, path: isList ? `[${i}].` : '' })
  const breaches = readings.flatMap((reading, i) => breachesOf(reading, held(i)))
  if (breaches.length > 0) throw badInput(breaches.slice(0, 50))
  const now = context.now()
  const stored = await inTransaction(context.db, async (tx) => {
    const answers: StoredReading[] = []
    for (const [i, reading] of readings.entries()) {
      const request = { noun: 'reading' as const, key: reading.key, body: { job: job.id, ...reading } }
      await refuseTakenBack(tx, 'readings', reading.key)
      const answer = await once(tx, request, now, async () => {
        const judgedReading = judged(reading, held(i), now)
        await insertReading(tx, job.id, judgedReading, now)
        return judgedReading
      })
      answers.push(answer)
    }
    return answers
  })
  for (const { piece } of stored) context.changes.tell('check', piece)
  return stored
}
