import type { Species } from '../../shared/wood/species.ts'

const confidenceWords: Record<Species['confidence'], string> = {
  cross: 'two prints agree',
  read: 'read once in print',
  computed: 'computed from other values',
  memory: 'from memory, not checked',
  shop: 'the shop’s own figures',
}

/** How sure the figures of a wood are, in words. */
export const confidenceOf = (wood: Species): string => confidenceWords[wood.confidence]

/** The mark that stands behind a wood whose figures are not all sure. */
export const markOf = (wood: Species): string => (wood.safe ? '' : ` · ${confidenceOf(wood)}`)
