import { describe, expect, it } from 'vitest'
import { takeAnswer, threadAnswer, workerBeside } from '../../../server/jobs/thread.ts'
import { badInput } from '../../../shared/problem.ts'

/** An answer as it arrives from another thread. */
const sent = async (work: () => unknown) => structuredClone(await threadAnswer(work))

describe('what a thread answers', () => {
  it('arrives as it was worked out', async () => {
    expect(takeAnswer(await sent(() => ({ boards: [1, 2] })))).toEqual({ boards: [1, 2] })
    expect(takeAnswer(await sent(() => Promise.resolve(undefined)))).toBeUndefined()
  })

  it('is refused with the fields found wrong, as it would be without a thread', async () => {
    const errors = [{ path: 'species', message: 'is not known; read "ash"' }]
    const answer = await sent(() => {
      throw badInput(errors)
    })
    expect(() => takeAnswer(answer)).toThrow(
      expect.objectContaining({
        code: 'bad-input',
        status: 422,
        errors,
        message: 'species: is not known; read "ash"',
      }),
    )
  })

  it('is no refusal when the work itself fails', async () => {
    await expect(threadAnswer(() => Promise.reject(new Error('the saw stopped')))).rejects.toThrow(
      'the saw stopped',
    )
  })
})

describe('the file of a worker', () => {
  it('is there in what is built, and sources do without', () => {
    expect(workerBeside('file:///made/jobs/cut.js', 'cut-worker')?.href).toBe(
      'file:///made/jobs/cut-worker.js',
    )
    expect(workerBeside('file:///made/jobs/cut.ts', 'cut-worker')).toBeUndefined()
  })
})
