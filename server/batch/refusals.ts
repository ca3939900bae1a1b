import { Problem } from '../../shared/problem.ts'

/** What is stored has gone on from the revision that was changed. */
export const changedMeanwhile = (): Problem =>
  new Problem('revision-stale', 'It was changed meanwhile: load it again.')

/** The key stands for something stored before there was such a request, by an import. */
export function keyTaken(noun: 'job' | 'profile', key: string): Problem {
  const message = `is a ${noun}’s already; make a new one. Read ${JSON.stringify(key)}`
  return new Problem('key-reused', `The key ${key} is a ${noun}’s already.`, [{ path: 'key', message }])
}
