import type { Plan } from '../../shared/plan.ts'
import { ofOnePiece } from '../../shared/profile/part.ts'
import { lotDensity, type Weighing } from '../../shared/wood/lot.ts'
import type { Species } from '../../shared/wood/species.ts'
import { changeJob, changeShop, Refusal, shopSettings, storedJob } from '../api.ts'
import { jobDrafts } from '../drafts.ts'
import { massIn } from '../elements/mass-words.ts'
import type { Weighed } from '../elements/scales-card.ts'
import { jobFileOf } from '../job-entries.ts'
import { withWeighing } from '../lots.ts'
import { noteChange } from '../store.ts'

/** The weighing of a piece of this job: half the turned pair where it is split. */
const weighingOf = ({ mass, at }: Weighed, { part, job }: Plan): Weighing => ({
  mass,
  volume: ofOnePiece(part.volume, job.profile),
  moisture: job.moisture,
  ...(at && { at }),
})

/** Keeps the weighing in the shop; settings changed elsewhere meanwhile are read anew, once. */
async function keepInShop(entry: Parameters<typeof withWeighing>[1], again = true) {
  const { value: shop, revision } = await shopSettings()
  const lots = withWeighing(shop.lots, entry)
  try {
    await changeShop({ ...shop, lots }, revision)
  } catch (failure) {
    if (!again || !(failure instanceof Refusal) || failure.status !== 412) throw failure
    return keepInShop(entry, false)
  }
  noteChange({ kind: 'shop', id: 'shop' })
  return lots.find(({ name }) => name === entry.name)!
}

/** A job that is still a draft is told its lot; a started one keeps its plan. */
async function takeLot(jobId: string, lot: string): Promise<boolean> {
  const job = await storedJob(jobId)
  if (job.state !== 'draft') return false
  if (job.lot === lot) return true
  const { revision } = await changeJob(jobId, job.revision, { ...jobFileOf(job), lot })
  const draft = jobDrafts.of(jobId)
  // Edits not saved yet go on from here, or their save would find the job changed.
  if (draft?.revision === job.revision)
    jobDrafts.keep(jobId, { ...draft, revision, file: { ...draft.file, lot } })
  noteChange({ kind: 'job', id: jobId })
  return true
}

/**
 * Keeps what a finished piece weighs in the shop's lot and says what came of it.
 * @throws Refusal where shop or job do not take it
 */
export async function keepWeighing(
  jobId: string,
  plan: Plan,
  wood: Species | undefined,
  weighed: Weighed,
): Promise<string> {
  const { job, part } = plan
  const { lot: name } = weighed
  const lot = await keepInShop({ name, species: job.species, weighing: weighingOf(weighed, plan) })
  const density = wood && lotDensity(lot, wood)
  const planned = await takeLot(jobId, name)
  const count = lot.weighings.length
  const kept = `Kept: the lot ${name} now stands on ${count} ${count === 1 ? 'weighing' : 'weighings'}.`
  if (!density || density.cautions.length > 0) return [kept, ...(density?.cautions ?? [])].join(' ')
  if (planned) return `${kept} The weight is predicted by it.`
  const now = ((part.mass ?? 0) / (part.lot?.factor ?? 1)) * density.factor
  return `${kept} By it ${job.profile.split ? 'the glued pair' : 'a part'} weighs ${massIn(now, job.units)}; the started batch keeps the weight it was planned with.`
}
