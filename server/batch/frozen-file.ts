import { isDeepStrictEqual } from 'node:util'
import { readJob } from '../../shared/job.ts'
import { type Breach, Problem } from '../../shared/problem.ts'

type JobFile = Record<string, unknown>

/** What may be changed after the start: who the batch is for, and where its profile is kept; nothing of the work. */
const FREE = ['name', 'customer', 'due', 'notes', 'from']

const planned = (file: object): JobFile =>
  Object.fromEntries(Object.entries(file).filter(([field]) => !FREE.includes(field)))

/** Fields that make other work of a job; a length written in another way is the same length. */
function fieldsChanged(stored: JobFile, sent: JobFile): string[] {
  if (isDeepStrictEqual(planned(stored), planned(sent))) return []
  const differing = (one: JobFile, other: JobFile): string[] =>
    [...new Set([...Object.keys(one), ...Object.keys(other)])].filter(
      (field) => !isDeepStrictEqual(one[field], other[field]),
    )
  const [before, after] = [planned(readJob(stored)), planned(readJob(sent))]
  const unread = differing(planned(stored), planned(sent)).filter((field) => !Object.hasOwn(after, field))
  return [...new Set([...differing(before, after), ...unread])].filter((field) => field !== 'unread')
}

/**
 * Whether a job file may take the place of the one its batch was started with.
 * @throws Problem `wrong-state` with every field that would change the work
 */
export function checkFrozen(stored: JobFile, sent: JobFile): void {
  const errors: Breach[] = fieldsChanged(stored, sent).map((path) => ({
    path,
    message: `cannot be changed any more; what can is ${FREE.join(', ')}`,
  }))
  if (errors.length === 0) return
  const message = 'The batch is started: its plan is frozen; duplicate the job to change it.'
  throw new Problem('wrong-state', message, errors)
}
