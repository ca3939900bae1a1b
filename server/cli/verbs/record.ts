import { badInput } from '../../../shared/problem.ts'
import { batchTimes, recordOf } from '../../batch/record.ts'
import type { Context } from '../../context.ts'
import { jobList, type StoredJob } from '../../storage/read/jobs.ts'
import type { Call } from '../command.ts'
import { asJson, type Speech } from '../output.ts'
import { batchTimesText, shopRecordText } from '../text/record.ts'
import { withContext } from './data.ts'

const nameOf = ({ file }: StoredJob): string => String(file.name)

/** The job by its id, or by its name where only one has it. */
async function jobMeant({ db }: Context, word: string): Promise<StoredJob> {
  const jobs = await jobList(db)
  const byId = jobs.find(({ id }) => id === word)
  const named = jobs.filter((job) => nameOf(job) === word)
  if (byId) return byId
  if (named.length === 1) return named[0]!
  const allowed = (named.length > 1 ? named : jobs).slice(0, 20).map((job) => `${nameOf(job)} (${job.id})`)
  const what = named.length > 1 ? 'is the name of several jobs; give an id' : 'is no job'
  throw badInput([
    {
      path: 'JOB|shop',
      message: `${what}: ${allowed.join(', ') || 'none is kept'}; read ${JSON.stringify(word)}`,
    },
  ])
}

/** Planned against actual of a batch, or what all times say of the shop. */
export async function record({ operands: [word], json }: Call, { out }: Speech): Promise<void> {
  await withContext(async (context) => {
    if (word === 'shop') {
      const known = await recordOf(context)
      out(json ? asJson(known) : shopRecordText(known))
      return
    }
    const job = await jobMeant(context, word!)
    const times = await batchTimes(context, job)
    out(json ? asJson(times) : batchTimesText(nameOf(job), times))
  })
}
