import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Db, migrate, openDatabase } from '../../../server/storage/database.ts'
import { forgetKey, once } from '../../../server/storage/write/used-keys.ts'

let db: Db
beforeAll(async () => {
  db = openDatabase(':memory:')
  await migrate(db)
})
afterAll(() => db.destroy())

const at = '2026-05-01T08:00:00.000Z'

describe('once', () => {
  it('does the work once and gives the same answer again, whatever the order of the fields', async () => {
    let done = 0
    const work = () => Promise.resolve({ n: ++done })
    expect(await once(db, { noun: 'job', key: 'a', body: { x: 1, y: [1, 2] } }, at, work)).toEqual({ n: 1 })
    expect(await once(db, { noun: 'job', key: 'a', body: { y: [1, 2], x: 1 } }, at, work)).toEqual({ n: 1 })
    expect(done).toBe(1)
  })

  it('refuses the key with another body', async () => {
    const again = once(db, { noun: 'job', key: 'a', body: { x: 1, y: [2, 1] } }, at, () => Promise.resolve(0))
    await expect(again).rejects.toMatchObject({ code: 'key-reused', status: 409 })
  })

  it('refuses the key for another noun, even with the same body', async () => {
    const other = once(db, { noun: 'step', key: 'a', body: { x: 1, y: [1, 2] } }, at, () =>
      Promise.resolve(0),
    )
    await expect(other).rejects.toMatchObject({
      code: 'key-reused',
      message: expect.stringContaining('for a job'),
    })
  })

  it('does not use up the key when the work fails', async () => {
    const request = { noun: 'job', key: 'b', body: {} } as const
    await expect(once(db, request, at, () => Promise.reject(new Error('no')))).rejects.toThrow('no')
    expect(await once(db, request, at, () => Promise.resolve('yes'))).toBe('yes')
  })

  it('gives one of two at once the work and both the answer', async () => {
    let done = 0
    const ask = () => once(db, { noun: 'job', key: 'c', body: {} }, at, () => Promise.resolve(++done))
    expect(await Promise.all([ask(), ask(), ask()])).toEqual([1, 1, 1])
  })

  it('takes a forgotten key anew', async () => {
    await forgetKey(db, 'job', 'c')
    expect(await once(db, { noun: 'job', key: 'c', body: { other: 1 } }, at, () => Promise.resolve(9))).toBe(
      9,
    )
  })
})
