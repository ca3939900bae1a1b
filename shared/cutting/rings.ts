import type { Board, Heart } from './board.ts'

/**
 * The angle between the growth rings and the board’s face, degrees, 0 to 90: 0 straight above or below the heart
 * (flat-sawn), 90 level with it (quarter-sawn). Rings are circles about the heart, so that each is square to the
 * line from there. `at` is the middle of a strip: across from the edge, and below the face; mm.
 *
 * @example ringAngle({ across: 100, below: 90 }, { across: 100, below: 25 }) // 0
 * @example ringAngle({ across: 100, below: 25 }, { across: 160, below: 25 }) // 90
 * @example ringAngle({ across: 100, below: 85 }, { across: 160, below: 25 }) // 45
 */
export function ringAngle(heart: Heart, at: Heart): number {
  const [aside, deep] = [Math.abs(at.across - heart.across), Math.abs(at.below - heart.below)]
  return (Math.atan2(aside, deep) * 180) / Math.PI
}

/**
 * What the trade calls wood whose rings lie so to its face: rift from 30° to 60°. From memory.
 *
 * @example sawnWords(45) // 'rift'
 * @example sawnWords(12) // 'flat-sawn'
 */
export const sawnWords = (degrees: number): 'flat-sawn' | 'rift' | 'quarter-sawn' =>
  degrees < 30 ? 'flat-sawn' : degrees > 60 ? 'quarter-sawn' : 'rift'

/** The rings that look alike on all four faces of a square, degrees to the face. */
export const BEST_RIFT = 45

/** What a board tells of its rings. */
export type RingBoard = Pick<Board, 'heart' | 'defects' | 'thickness'>

/** Where the heart lies as far as the board tells: as measured, or in the middle of a stripe of pith. */
export function heartOf(board: RingBoard): Heart | undefined {
  if (board.heart) return board.heart
  const pith = board.defects?.find(({ kind, across }) => across && /^pith\b/i.test(kind?.trim() ?? ''))
  if (!pith?.across) return undefined
  return { across: (pith.across[0] + pith.across[1]) / 2, below: board.thickness / 2 }
}

/**
 * How the rings lie in strips side by side, in words, by the middle of each; `undefined` where the heart is not known.
 * Each `across` from the edge that places are measured from, mm.
 *
 * @example ringText({ thickness: 50, heart: { across: 100, below: 85 } }, [[140, 180]]) // 'rings 45° to the face, rift'
 * @example ringText({ thickness: 50, heart: { across: 100, below: 85 } }, [[80, 120], [140, 180]]) // 'rings 0°, 45° to the face'
 */
export function ringText(
  board: RingBoard,
  acrosses: readonly (readonly [number, number])[],
): string | undefined {
  const heart = heartOf(board)
  if (!heart) return undefined
  const angles = acrosses.map(([low, high]) =>
    ringAngle(heart, { across: (low + high) / 2, below: board.thickness / 2 }),
  )
  const [only, ...others] = angles
  const word = only !== undefined && others.length === 0 ? `, ${sawnWords(only)}` : ''
  return `rings ${angles.map((degrees) => `${Math.round(degrees)}°`).join(', ')} to the face${word}`
}
