import type { ClearBoard } from './clear-boards.ts'
import type { Counts } from './counts.ts'

/** What a column of the model stands for; those of chains are told by their chain. */
export type Meaning =
  /** Boards ripped so: strips of each side, band for band. */
  | { is: 'ripped'; kind: number; clear: ClearBoard; counts: Counts[] }
  /** Boards crosscut into sections. */
  | { is: 'crosscut'; kind: number; clear: ClearBoard }
  /** Runs of such boards crosscut so: sections of each length. */
  | { is: 'sections'; kind: number; clear: ClearBoard; run: number; counts: Counts }
  | { is: 'strip' | 'section' | 'single' | 'down' }
  | { is: 'missing'; size: number }

/** The kind of board that a column takes one of; `undefined` when it takes none. */
export const boardOf = (meaning: Meaning): number | undefined =>
  meaning.is === 'ripped' || meaning.is === 'crosscut' ? meaning.kind : undefined
