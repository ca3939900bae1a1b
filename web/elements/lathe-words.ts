import type { Profile } from '../../shared/profile/profile.ts'
import type { OperationKind } from '../../shared/route/kinds.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { placeText } from '../../shared/route/order-rows.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { stationName } from './operation-words.ts'

/** What each kind of work is called across the shop, in as few words as a turner would use. */
const calls: Partial<Record<OperationKind, string>> = {
  rip: 'Rip the strips',
  'rest-strips': 'Rest the strips',
  plane: 'Plane the strips',
  crosscut: 'Crosscut',
  'face-layers': 'Plane the layers',
  glue: 'Glue up',
  'plane-blank': 'Plane the blank',
  corners: 'Saw off corners',
  'plane-square': 'Plane the square',
  'square-ends': 'Cut the ends',
  mortise: 'Cut the mortise',
  bore: 'Bore',
  'cut-tenon': 'Saw the tenon',
  'strike-shoulders': 'Strike the shoulders',
  centres: 'Mark the centres',
  mount: 'Mount it',
  shoulder: 'Cut the shoulder',
  rough: 'Rough it',
  label: 'Number it',
  dry: 'Seal and dry',
  'plane-dried': 'Plane it true',
  remount: 'Mount it again',
  'true-up': 'True it up',
  journal: 'Turn the journal',
  'story-stick': 'Strike the marks',
  'step-face': 'Face the step',
  blend: 'Blend in the journal',
  'sand-squares': 'Sand the square',
  'check-set': 'Check the set',
  return: 'Put it back',
  part: 'Part it off',
  reverse: 'Reverse in jam chuck',
  'jam-face': 'Face in jam chuck',
  'pare-ends': 'Pare the ends',
  nub: 'Saw off the nub',
  split: 'Split the pair',
  pack: 'Wrap',
}

/** An operation in the few words that are read from the lathe; its whole sentence stands on its card. */
export function latheCall(operation: Operation, profile: Profile, style: LengthStyle): string {
  const { kind, name, spans } = operation
  if (kind === 'size') return `Size ${sizedCall(operation, profile, style)}`
  if (kind === 'sand') return 'Sand'
  if (spans && spans.length > 0) return featureCall(name)
  return calls[kind] ?? shortened(name)
}

/** `the collar`, or where it lies when it has no name of its own. */
function sizedCall({ caliperStation: key, where }: Operation, profile: Profile, style: LengthStyle): string {
  const name = key === undefined ? 'station' : stationName(profile, key)
  return name === key || /^station\b/.test(name) ? latheWhere({ where }, style) : `the ${name}`
}

/** `Cut the neck (cove) at 2 in` without its place, which stands below: `Cut the neck cove`. */
const featureCall = (name: string): string => name.replace(/ (at|from) \d.*$/, '').replace(/\((\w+)\)/, '$1')

/** Up to the first joint of the sentence: `Square the foot and turn its waste …` is `Square the foot`. */
const shortened = (name: string): string => name.split(/ and |, | on the lathe| by hand/)[0] ?? name

/** The tool as it is asked for across the shop: `1/8 in parting`, `3/4 in roughing`; for sanding the grits. */
export function latheTool(
  { kind, tool }: Pick<Operation, 'kind' | 'tool'>,
  grits: readonly number[],
): string {
  if (kind === 'sand' && grits.length > 0) return grits.join(', ')
  return tool.replace(/(?<=parting) tool$|(?<=roughing) gouge$/, '')
}

/** Where it is done with one unit for both ends: `at 18-1/2 in`, `5 – 20 in`. */
export const latheWhere = ({ where }: Pick<Operation, 'where'>, style: LengthStyle): string =>
  where ? placeText(where, style) : ''
