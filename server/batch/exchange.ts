import { isDeepStrictEqual } from 'node:util'
import { z } from 'zod'
import { readBoard } from '../../shared/contract/board.ts'
import { jobFileOf } from '../../shared/contract/job.ts'
import { id } from '../../shared/contract/key.ts'
import { listOf, moment, readInput } from '../../shared/input.ts'
import { readJob } from '../../shared/job.ts'
import { type Breach, badInput } from '../../shared/problem.ts'
import { readShop } from '../../shared/shop.ts'
import { type Context, shopOf } from '../context.ts'
import { version } from '../package-root.ts'
import { type Db, inTransaction } from '../storage/database.ts'
import { boardByKey, boardList } from '../storage/read/boards.ts'
import { isJobIdTaken, jobById, jobList } from '../storage/read/jobs.ts'
import { storedShop } from '../storage/read/shop.ts'
import { insertBoard } from '../storage/write/boards.ts'
import { insertJob } from '../storage/write/jobs.ts'
import { saveShop } from '../storage/write/shop.ts'
import { breachesIn, repeatedIds } from './breaches-in.ts'
import { profilesBreaches, profilesSchema, profilesToSend, takeProfiles } from './exchange-profiles.ts'
import { inUtc } from './step.ts'

/** Job files, profiles, shop settings and boards, as they were entered. Pieces and readings travel in a backup. */
export async function exportAll({ db }: Context): Promise<Record<string, unknown>> {
  const jobs = (await jobList(db)).map(({ id, createdAt, file }) => ({ id, createdAt, ...file }))
  const profiles = await profilesToSend(db)
  const boards = (await boardList(db)).map(({ file }) => file)
  const shop = (await storedShop(db))?.file
  return { setwright: version, jobs, profiles, boards, ...(shop ? { shop } : {}) }
}

const exchangeSchema = z.object({
  setwright: z.string(),
  jobs: listOf(z.looseObject({ id: id.max(100), createdAt: moment.optional() }), {
    most: 100_000,
  }).prefault([]),
  profiles: profilesSchema.prefault([]),
  boards: listOf(z.looseObject({ key: id.max(80) }), { most: 100_000 }).prefault([]),
  shop: z.looseObject({}).optional(),
})
type Exchange = z.output<typeof exchangeSchema>

function checkWhole({ jobs, profiles, boards, shop }: Exchange): void {
  const breaches = [
    ...repeatedIds('jobs', jobs),
    ...jobs.flatMap((job, i) => breachesIn(`jobs[${i}]`, () => readJob(jobFileOf(job)))),
    ...profilesBreaches(profiles),
    ...boards.flatMap((board, i) => breachesIn(`boards[${i}]`, () => readBoard(board, 'in'))),
    ...(shop ? breachesIn('shop', () => readShop(shop)) : []),
  ]
  if (breaches.length > 0) throw badInput(breaches.slice(0, 50))
}

/** Puts boards on the rack that are not there yet, with the units of their text lengths written down; how many. */
async function newBoards(db: Db, { boards, shop }: Exchange, at: string): Promise<number> {
  const { units } = shop ? readShop(shop) : await shopOf({ db })
  let added = 0
  for (const [i, board] of boards.entries()) {
    const file = { units, ...board }
    const here = await boardByKey(db, file.key)
    if (here && !isDeepStrictEqual(here.file, file))
      throw badInput([
        {
          path: `boards[${i}].key`,
          message: `is on the rack already, with other content; read ${JSON.stringify(file.key)}`,
        },
      ])
    if (here) continue
    await insertBoard(db, { key: file.key, file }, at)
    added += 1
  }
  return added
}

/** Jobs not here yet; one that is here with other content stands in the way of the whole import. */
async function newJobs(db: Db, { jobs }: Exchange) {
  const fresh: { id: string; createdAt?: string; file: Record<string, unknown> }[] = []
  const breaches: Breach[] = []
  for (const [i, job] of jobs.entries()) {
    const file = jobFileOf(job)
    if (!(await isJobIdTaken(db, job.id))) fresh.push({ id: job.id, createdAt: job.createdAt, file })
    else if (!isDeepStrictEqual((await jobById(db, job.id))?.file, file))
      breaches.push({
        path: `jobs[${i}].id`,
        message: `is a job's here already, with other content; read ${JSON.stringify(job.id)}`,
      })
  }
  if (breaches.length > 0) throw badInput(breaches.slice(0, 50))
  return fresh
}

/**
 * Takes in what was exported, all of it or nothing; what is here already and the same is left as it is.
 * @throws Problem `bad-input` when something cannot be used, or is here already with other content
 */
export async function importAll({ db, now }: Context, input: unknown) {
  const exchange = readInput(exchangeSchema, input)
  checkWhole(exchange)
  return inTransaction(db, async (tx) => {
    const at = now()
    const jobs = await newJobs(tx, exchange)
    for (const { id, file, createdAt } of jobs)
      await insertJob(tx, { id, file, at: createdAt ? inUtc(createdAt) : at })
    const profiles = await takeProfiles(tx, exchange.profiles, at)
    const boards = await newBoards(tx, exchange, at)
    if (exchange.shop) await saveShop(tx, exchange.shop, (await storedShop(tx))?.revision ?? 0, at)
    return { jobs: jobs.length, profiles, boards, shop: exchange.shop !== undefined }
  })
}
