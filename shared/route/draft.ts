import type { CutKind } from '../turning/edge.ts'
import type { Speed } from '../turning/speed.ts'
import { type OperationKind, operationKinds } from './kinds.ts'
import type { OperationDraft, Work } from './operation.ts'

/** What an operation says for itself; everything else follows from its kind. */
export interface DraftFields {
  key?: string
  name: string
  where?: [number, number]
  tool: string
  speed?: Speed
  caliper?: number
  caliperStation?: string
  caliperAlso?: string[]
  restPosition?: number
  restThrough?: number
  stretch?: number
  work?: Partial<Work>
  spans?: number[]
  cut?: CutKind
  why: string
  /** Joined to one text; those absent are left out. */
  cautions?: (string | undefined)[]
}

const NO_WORK: Work = { length: 0, surface: 0, removed: 0, count: 1, diameter: 0 }

/** An operation of a kind, without its place in the order yet (`pass` and `after` come from the route). */
export function draftOf(kind: OperationKind, fields: DraftFields): OperationDraft {
  const {
    speed,
    caliper,
    caliperStation,
    caliperAlso = [],
    restPosition,
    restThrough,
    stretch,
    spans,
    cut,
  } = fields
  const caution = [speed?.caution, ...(fields.cautions ?? [])].filter((text) => text !== undefined).join(' ')
  return {
    key: fields.key ?? kind,
    kind,
    name: fields.name,
    stage: operationKinds[kind].stage,
    pass: 0,
    where: fields.where ?? null,
    tool: fields.tool,
    ...(speed?.rpm !== undefined && { rpm: speed.rpm }),
    ...(speed && { rpmCeiling: speed.rpmCeiling, ceilingBy: speed.ceilingBy }),
    ...(caliper !== undefined && { caliper }),
    ...(caliperStation !== undefined && { caliperStation }),
    ...(caliperAlso.length > 0 && { caliperAlso }),
    ...(restPosition !== undefined && { restPosition }),
    ...(restThrough !== undefined && { restThrough }),
    ...(stretch !== undefined && { stretch }),
    learns: operationKinds[kind].learns,
    work: { ...NO_WORK, ...fields.work },
    ...(spans && { spans }),
    ...(cut && { cut }),
    after: [],
    why: fields.why,
    ...(caution !== '' && { caution }),
  }
}
