import type { Stage } from './operation.ts'

/**
 * Every kind of operation in working order: where it belongs, and whether it is hand work that quickens with
 * practice. The order is the habit of the bench; what must really come first is in `precedence.ts`.
 */
export const operationKinds = {
  rip: { stage: 'milling', learns: false },
  'rest-strips': { stage: 'milling', learns: false },
  /** Strips, while they are long enough for the machines. */
  plane: { stage: 'milling', learns: false },
  crosscut: { stage: 'milling', learns: false },
  /** Layers of a glue-up, cut to the length of the blank. */
  'face-layers': { stage: 'milling', learns: false },
  glue: { stage: 'milling', learns: false },
  /** The glued blank. */
  'plane-blank': { stage: 'milling', learns: false },
  /** The corners of a big square sawn off before it goes on the lathe. */
  corners: { stage: 'milling', learns: false },
  /** A part left square that is smaller than the blank. */
  'plane-square': { stage: 'milling', learns: false },
  'square-ends': { stage: 'milling', learns: false },
  mortise: { stage: 'joinery', learns: false },
  bore: { stage: 'joinery', learns: false },
  'cut-tenon': { stage: 'joinery', learns: false },
  'strike-shoulders': { stage: 'layout', learns: true },
  centres: { stage: 'layout', learns: true },
  mount: { stage: 'set-up', learns: true },
  shoulder: { stage: 'turning', learns: true },
  rough: { stage: 'turning', learns: true },
  label: { stage: 'handwork', learns: true },
  /** Rough-turned wet wood put aside until it is dry. */
  dry: { stage: 'handwork', learns: false },
  /** Squares that dried smaller and out of true. */
  'plane-dried': { stage: 'handwork', learns: false },
  /** On the lathe a second time, when all are roughed first. */
  remount: { stage: 'set-up', learns: true },
  /** What dried out of round is made round again. */
  'true-up': { stage: 'turning', learns: true },
  journal: { stage: 'turning', learns: true },
  'story-stick': { stage: 'layout', learns: true },
  size: { stage: 'turning', learns: true },
  straight: { stage: 'turning', learns: true },
  'step-face': { stage: 'turning', learns: true },
  bead: { stage: 'turning', learns: true },
  cove: { stage: 'turning', learns: true },
  ovolo: { stage: 'turning', learns: true },
  cavetto: { stage: 'turning', learns: true },
  ogee: { stage: 'turning', learns: true },
  curve: { stage: 'turning', learns: true },
  taper: { stage: 'turning', learns: true },
  tenon: { stage: 'turning', learns: true },
  sand: { stage: 'sanding', learns: true },
  /** What the steady rest ran on, once it has come away. */
  blend: { stage: 'turning', learns: true },
  end: { stage: 'turning', learns: true },
  /** Parts left square, by hand. */
  'sand-squares': { stage: 'handwork', learns: true },
  'check-set': { stage: 'checking', learns: true },
  /** Back on the lathe once the set is checked. */
  return: { stage: 'set-up', learns: true },
  'finish-on-lathe': { stage: 'finish', learns: true },
  'joint-round': { stage: 'joinery', learns: false },
  part: { stage: 'turning', learns: true },
  /** The other way round in a jam chuck, once it is parted off. */
  reverse: { stage: 'set-up', learns: true },
  /** The parted face finished with the part held in a jam chuck. */
  'jam-face': { stage: 'turning', learns: true },
  /** Ends bared in the middle of a stick, off the lathe. */
  'pare-ends': { stage: 'handwork', learns: true },
  nub: { stage: 'handwork', learns: true },
  split: { stage: 'handwork', learns: true },
  finish: { stage: 'finish', learns: false },
  pack: { stage: 'packing', learns: false },
} as const satisfies Record<string, { stage: Stage; learns: boolean }>

export type OperationKind = keyof typeof operationKinds
