import { createHash } from 'node:crypto'
import { Problem } from '../../../shared/problem.ts'
import { type Db, inTransaction } from '../database.ts'

/** What a client asked for under a key of its own making. */
export interface KeyedRequest {
  noun:
    | 'job'
    | 'start'
    | 'step'
    | 'spoil'
    | 'reading'
    | 'board'
    | 'profile'
    | 'sawn'
    | 'touch-up'
    | 'weighing'
  key: string
  /** Everything that makes the request what it is, the address included. */
  body: unknown
}

/** The value with the fields of every object in one order, so that equal bodies give equal text. */
function inOneOrder(value: unknown): unknown {
  if (Array.isArray(value)) return ['[', ...value.map(inOneOrder)]
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return ['{', ...entries.map(([name, inner]) => [name, inOneOrder(inner)])]
}

const hashOf = (body: unknown): string =>
  createHash('sha256')
    .update(JSON.stringify(inOneOrder(body)) ?? '')
    .digest('hex')

/**
 * The answer given before under this key, if any.
 * @throws Problem `key-reused` when the key was used with another body, or for another noun
 */
export async function answerBefore<T>(db: Db, { noun, key, body }: KeyedRequest): Promise<T | undefined> {
  const used = await db
    .selectFrom('used_keys')
    .selectAll()
    .where('key', '=', key)
    .orderBy((eb) => eb('noun', '=', noun), 'desc')
    .executeTakeFirst()
  if (!used) return undefined
  if (used.noun === noun && used.body_hash === hashOf(body)) return JSON.parse(used.answer) as T
  throw new Problem('key-reused', `The key ${key} was used before, for a ${used.noun} with other content.`, [
    {
      path: 'key',
      message: `was used before with other content; make a new one. Read ${JSON.stringify(key)}`,
    },
  ])
}

/** Does `work` once for a key, in one transaction; the same request again gets the same answer. */
export async function once<T>(
  db: Db,
  request: KeyedRequest,
  at: string,
  work: (db: Db) => Promise<T>,
): Promise<T> {
  return inTransaction(db, async (tx) => {
    const before = await answerBefore<T>(tx, request)
    if (before !== undefined) return before
    const answer = await work(tx)
    const { noun, key, body } = request
    const row = { noun, key, body_hash: hashOf(body), answer: JSON.stringify(answer), used_at: at }
    await tx.insertInto('used_keys').values(row).execute()
    return answer
  })
}

/** Frees a key, so that what was deleted under it can be entered anew. */
export async function forgetKey(db: Db, noun: KeyedRequest['noun'], key: string): Promise<void> {
  await db.deleteFrom('used_keys').where('noun', '=', noun).where('key', '=', key).execute()
}
