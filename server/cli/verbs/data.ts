import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { badInput } from '../../../shared/problem.ts'
import { exportAll, importAll } from '../../batch/exchange.ts'
import { readConfig } from '../../config.ts'
import { type Context, openContext } from '../../context.ts'
import { backUp, restoreFrom } from '../../storage/backup.ts'
import type { Call } from '../command.ts'
import { readFile } from '../input.ts'
import { asJson, type Speech, writeOut } from '../output.ts'

/** An export holds every job and photograph of a shop; a text can hardly be longer in one piece. */
const IMPORT_BYTES_MAX = 400_000_000

/** Opens the database that the server uses, for as long as `work` takes. */
export async function withContext<T>(work: (context: Context) => Promise<T>): Promise<T> {
  const context = await openContext(readConfig(process.env))
  try {
    return await work(context)
  } finally {
    await context.db.destroy()
  }
}

export async function backup({ operands: [name], here }: Call, { out }: Speech): Promise<void> {
  const file = resolve(here, name!)
  if (existsSync(file))
    throw badInput([{ path: name!, message: 'is there already; name a file that is not' }])
  const { database } = readConfig(process.env)
  if (!existsSync(database))
    throw badInput([{ path: 'DATA_DIR', message: `has no database yet; looked for ${database}` }])
  await withContext(({ db }) => backUp(db, file))
  out(`${file}\n`)
}

export async function restore({ operands: [name], here }: Call, { out }: Speech): Promise<void> {
  const { database } = readConfig(process.env)
  const kept = await restoreFrom(resolve(here, name!), database, new Date().toISOString())
  out(kept === undefined ? `${database}\n` : `${database}\nwhat was there before: ${kept}\n`)
}

export async function exportData({ operands: [name], here }: Call, { out }: Speech): Promise<void> {
  const everything = asJson(await withContext(exportAll))
  if (name === '-') out(everything)
  else await writeOut(name!, here, everything, 'wx')
}

export async function importData({ operands: [name], here }: Call, { out }: Speech): Promise<void> {
  const file = await readFile(name!, here, IMPORT_BYTES_MAX)
  const { jobs, profiles, boards, shop } = await withContext((context) => importAll(context, file))
  const settings = shop ? 'the shop’s settings' : 'no shop settings'
  out(`taken in: ${jobs} jobs, ${profiles} profiles, ${boards} boards, ${settings}\n`)
}
