import type { OperationKind } from '../route/kinds.ts'

/**
 * What an operation takes an experienced turner: minutes on the tenth piece of a batch, in a hardwood of
 * middling hardness. Absent terms are nothing.
 */
interface BaseMinutes {
  /** Getting ready, once for the batch, and that much more for each cut, mark or joint. */
  once?: number
  oncePerCount?: number
  /** Picking up, holding up and putting down, for each blank. */
  each: number
  /** For each cut, mark, joint, grit or coat. */
  perCount?: number
  /** For each 100 mm of length. */
  per100Mm?: number
  /** For each 100 cm² gone over. */
  per100Cm2?: number
  /** For each 100 cm³ taken off. */
  per100Cm3?: number
}

/** Where every figure of `baseMinutes` comes from. */
export const baseMinutesSource =
  'common practice, no source: a spindle turner’s working pace; the shop’s own record comes first'

/** All figures: common practice, no source (`baseMinutesSource`). */
export const baseMinutes: Record<OperationKind, BaseMinutes> = {
  rip: { once: 5, each: 0.2, per100Mm: 0.06 },
  'rest-strips': { once: 5, each: 0.1, per100Mm: 0.005 },
  plane: { once: 6, each: 0.3, per100Mm: 0.1 },
  'face-layers': { once: 6, each: 0.3, per100Mm: 0.1 },
  glue: { once: 6, each: 2, perCount: 0.5, per100Cm2: 0.25 },
  'plane-blank': { once: 4, each: 0.4, per100Mm: 0.15, per100Cm2: 0.05 },
  crosscut: { once: 3, each: 0.25, perCount: 0.1 },
  corners: { once: 4, each: 0.3, per100Mm: 0.04 },
  'plane-square': { once: 4, each: 0.4, per100Mm: 0.04, per100Cm3: 0.5 },
  'plane-dried': { once: 4, each: 0.4, per100Mm: 0.06, per100Cm3: 1 },
  'square-ends': { once: 3, each: 0.25, perCount: 0.15 },
  mortise: { once: 8, each: 0.5, perCount: 2, per100Cm3: 4 },
  bore: { once: 6, each: 0.3, perCount: 0.6, per100Cm3: 2 },
  'cut-tenon': { once: 8, each: 0.5, perCount: 1.5, per100Cm3: 3 },
  'strike-shoulders': { once: 3, each: 0.1, perCount: 0.08 },
  centres: { once: 1, each: 0.4, perCount: 0.1 },
  mount: { once: 3, each: 0.8 },
  remount: { once: 1, each: 0.8 },
  shoulder: { once: 0.5, each: 0.3, perCount: 0.6, per100Cm3: 1.5 },
  rough: { once: 1, each: 0.4, per100Mm: 0.12, per100Cm3: 0.6 },
  dry: { once: 2, each: 0.5, perCount: 0.1 },
  'true-up': { once: 0.5, each: 0.4, per100Mm: 0.12, per100Cm3: 0.6 },
  journal: { once: 2, each: 0.6, per100Mm: 0.5, per100Cm3: 1 },
  'story-stick': { once: 6, oncePerCount: 0.4, each: 0.2, perCount: 0.05 },
  size: { once: 0.5, each: 0.05, perCount: 0.25, per100Cm3: 1.5 },
  straight: { once: 0.2, each: 0.1, perCount: 0.25, per100Mm: 0.4, per100Cm3: 0.8 },
  taper: { once: 0.2, each: 0.1, perCount: 0.3, per100Mm: 0.45, per100Cm3: 0.8 },
  bead: { once: 0.3, each: 0.1, perCount: 0.4, per100Mm: 1.5, per100Cm3: 1.2 },
  cove: { once: 0.3, each: 0.1, perCount: 0.4, per100Mm: 1.5, per100Cm3: 1.2 },
  ovolo: { once: 0.3, each: 0.1, perCount: 0.35, per100Mm: 1.2, per100Cm3: 1.2 },
  cavetto: { once: 0.3, each: 0.1, perCount: 0.4, per100Mm: 1.2, per100Cm3: 1.2 },
  ogee: { once: 0.5, each: 0.1, perCount: 0.5, per100Mm: 1.2, per100Cm3: 1.2 },
  curve: { once: 0.5, each: 0.2, perCount: 0.2, per100Mm: 0.7, per100Cm3: 1 },
  tenon: { once: 1, each: 0.1, perCount: 0.6, per100Mm: 1, per100Cm3: 2 },
  'step-face': { once: 0.1, each: 0.05, perCount: 0.2, per100Cm2: 0.5 },
  end: { once: 0.2, each: 0.2, perCount: 0.35, per100Cm3: 2 },
  sand: { once: 1, each: 0.1, perCount: 0.15, per100Cm2: 0.55 },
  blend: { once: 0.3, each: 0.5, perCount: 0.3, per100Mm: 1.2 },
  'sand-squares': { once: 1, each: 0.2, perCount: 0.05, per100Cm2: 0.4 },
  'finish-on-lathe': { once: 2, each: 0.4, perCount: 0.2, per100Cm2: 0.25 },
  'check-set': { once: 2, each: 0.3, perCount: 0.15 },
  return: { once: 1, each: 0.8 },
  part: { once: 0.3, each: 0.2, perCount: 0.3, per100Cm3: 2 },
  reverse: { once: 3, each: 0.1, perCount: 0.4 },
  'jam-face': { once: 0.2, each: 0.2, perCount: 0.9, per100Cm2: 2, per100Cm3: 2 },
  'pare-ends': { once: 0.5, each: 0.1, perCount: 0.6, per100Cm2: 0.6 },
  nub: { once: 0.5, each: 0.3, perCount: 0.4 },
  split: { once: 1, each: 0.8, per100Mm: 0.1 },
  'joint-round': { once: 6, each: 0.8, perCount: 1.5, per100Cm3: 3 },
  label: { once: 1, each: 0.15, perCount: 0.05 },
  finish: { once: 8, each: 0.3, perCount: 0.4, per100Cm2: 0.5 },
  pack: { once: 5, each: 0.6, per100Mm: 0.05 },
}
