import { jobFileOf as fileAlone } from '../shared/contract/job.ts'
import { readForce } from '../shared/units/force.ts'
import { readLength, type Units } from '../shared/units/length.ts'
import { enteredNumber } from './entry.ts'
import type { Entered, EnteredJoint, EnteredStation, JobFile } from './job-file.ts'

/** The job a person starts from: a plain round stick, so that the drawing has something to show. */
export const newJobFile = (units: Units): JobFile => ({
  name: '',
  units,
  species: 'maple-sugar',
  quantity: 4,
  profile: {
    stations:
      units === 'in'
        ? [
            { at: '0', diameter: '1 1/2', then: 'straight' },
            { at: '12', diameter: '1 1/2' },
          ]
        : [
            { at: '0', diameter: '38', then: 'straight' },
            { at: '300', diameter: '38' },
          ],
  },
})

/** Whether a job is still the plain stick it started as: no length of it is a person's. */
export function isUnbegun({
  units,
  profile,
  joints,
  stair,
  tolerance,
  allowances,
  instrument,
}: Lengths): boolean {
  const written = [stair, tolerance, allowances, instrument].some((part) => part !== undefined)
  return (
    !written &&
    (joints ?? []).length === 0 &&
    JSON.stringify(profile.stations) === JSON.stringify(newJobFile(units).profile.stations)
  )
}

const sizes = ['at', 'diameter', 'rise', 'depth', 'side', 'shoulderLength', 'plus', 'minus'] as const
const numbersNotLengths = new Set(['practice', 'bowPerMm'])

/** What of a file holds lengths; a job file and a profile of the library are such. */
export type Lengths = Pick<
  JobFile,
  'units' | 'profile' | 'joints' | 'stair' | 'tolerance' | 'allowances' | 'instrument'
>

/** A load without a unit is read in pounds or newtons, as the job is written. */
function stairInUnits(
  { run, gap, load, between }: NonNullable<JobFile['stair']>,
  units: Units,
  keep: <T extends Entered | undefined>(value: T) => T,
): NonNullable<JobFile['stair']> {
  const force =
    typeof load === 'string' && readForce(load, 'in') !== readForce(load, 'mm')
      ? `${load} ${units === 'in' ? 'lb' : 'N'}`
      : load
  return {
    ...(run !== undefined && { run: keep(run) }),
    ...(gap !== undefined && { gap: keep(gap) }),
    ...(force !== undefined && { load: force }),
    ...(between && { between: between.map(keep) }),
  }
}

/** The file in other units, every length meaning what it meant: text without a unit gets the one it was read in. */
export function inUnits<File extends Lengths>(file: File, units: Units): File {
  if (units === file.units) return file
  const keep = <T extends Entered | undefined>(value: T): T =>
    typeof value === 'string' && readLength(value, 'in') !== readLength(value, 'mm')
      ? (`${value} ${file.units}` as T)
      : value
  const all = (record: Record<string, Entered | undefined> | undefined) =>
    record &&
    Object.fromEntries(
      Object.entries(record).map(([name, value]) => [
        name,
        numbersNotLengths.has(name) ? value : keep(value),
      ]),
    )
  const station = (entered: EnteredStation): EnteredStation => {
    const kept = { ...entered }
    for (const name of sizes) if (kept[name] !== undefined) kept[name] = keep(kept[name])
    return kept
  }
  const joint = (entered: EnteredJoint): EnteredJoint => ({
    ...entered,
    at: keep(entered.at),
    depth: keep(entered.depth),
    size: Array.isArray(entered.size) ? entered.size.map(keep) : keep(entered.size),
  })
  return {
    ...file,
    units,
    profile: { ...file.profile, stations: file.profile.stations.map(station) },
    ...(file.joints && { joints: file.joints.map(joint) }),
    ...(file.stair && { stair: stairInUnits(file.stair, file.units, keep) }),
    ...(file.tolerance && { tolerance: all(file.tolerance) as NonNullable<JobFile['tolerance']> }),
    ...(file.allowances && { allowances: all(file.allowances) as NonNullable<JobFile['allowances']> }),
    ...(file.instrument && { instrument: all(file.instrument) as NonNullable<JobFile['instrument']> }),
  }
}

const numberOf = (entry: Entered | undefined) => (typeof entry === 'string' ? enteredNumber(entry) : entry)

/** Joints as they are read and sent: their angles, kept as typed while they are written, become numbers. */
export const sentJoints = (joints: EnteredJoint[]): EnteredJoint[] =>
  joints.map((joint) => (joint.angle === undefined ? joint : { ...joint, angle: numberOf(joint.angle) ?? 0 }))

/**
 * The file as it is read and sent: counts, percentages and angles, kept as typed while they are written, become
 * numbers; what is none stays text, to be refused by name. Lengths stay as entered.
 */
export function sentFile(file: JobFile): JobFile {
  const sent = { ...file }
  for (const name of ['quantity', 'moisture', 'serviceMoisture', 'perBlank'] as const) {
    if (name === 'perBlank' && sent.perBlank === 'auto') continue
    const number = numberOf(sent[name])
    if (number === undefined) delete (sent as Partial<JobFile>)[name]
    else sent[name] = number
  }
  if (sent.lumber?.moisture !== undefined) {
    const { moisture, ...lumber } = sent.lumber
    const number = numberOf(moisture)
    sent.lumber = number === undefined ? lumber : { ...lumber, moisture: number }
  }
  if (sent.joints) sent.joints = sentJoints(sent.joints)
  if (sent.allowances?.practice !== undefined) {
    sent.allowances = { ...sent.allowances, practice: numberOf(sent.allowances.practice) ?? 0 }
  }
  return sent
}

/**
 * Only what belongs in a job file, without what the server adds.
 * @throws Problem `bad-input` for what is no object
 */
export const jobFileOf = (stored: unknown): JobFile => fileAlone(stored) as unknown as JobFile
