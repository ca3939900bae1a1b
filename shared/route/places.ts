import type { SizedPlace } from '../turning/calipers.ts'
import type { OperationDraft } from './operation.ts'

/** What the calipers are set to and where, in the order of the operations; diameters in mm. */
export const placesOf = (drafts: OperationDraft[]): SizedPlace[] =>
  drafts.flatMap(({ caliper, caliperStation, caliperAlso = [] }) =>
    caliper === undefined
      ? []
      : [caliperStation!, ...caliperAlso].map((station) => ({ station, diameter: caliper })),
  )
