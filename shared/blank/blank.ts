import type { Mount } from './mount.ts'
export interface LatheFit {
  name: string
  fits: boolean
  why: string[]
}

/** The square that goes on the lathe and what is sawn for it. Lengths mm, mass g. */
export interface Blank {
  side: number
  sawn: number
  length: number
  stock: { perBlank: number; sticks: number }
  layers: number
  /** e.g. `8/4`; absent when nothing the shop can get is thick enough (then `cautions` says so). */
  nominal?: string
  /** Rough thickness of that nominal, and thickness one layer must have at least. */
  thickness: number
  layerThickness: number
  diagonal: number
  mass: number
  lathes: LatheFit[]
  /** Blanks that must come out good, extra ones, and both together. */
  need: number
  spares: number
  count: number
  practice: number
  /** Where the length goes: part, waste at the foot, at the top, between parts; mm. */
  lengthParts: { parts: number; foot: number; top: number; between: number; mount: Mount; drivenEnd: 'foot' | 'top' }
  cautions: string[]
}
