import { nm } from '../units/length.ts'
import type { Span } from './profile.ts'
import { circleRadius } from './shapes/arc.ts'

/**
 * Radius of the circle that a span is part of, mm: of a bead or a cove, or of an ovolo or a cavetto that is as high
 * as it is wide. None for anything else, nor for an arc of no height.
 *
 * @example arcRadius({ index: 0, shape: 'bead', from: 0, to: 16, d0: 30, d1: 30, sagitta: 4, station: { at: 0, then: 'bead' } }) // 10
 */
export function arcRadius({ shape, from, to, d0, d1, sagitta = 0 }: Span): number | undefined {
  const width = to - from
  if (shape === 'bead' || shape === 'cove') return nm(sagitta) > 0 ? circleRadius(width, sagitta) : undefined
  const isQuarter = shape === 'ovolo' || shape === 'cavetto'
  return isQuarter && nm(Math.abs(d1 - d0) / 2) === nm(width) ? width : undefined
}

/** Whether a bead or a cove is a half round, to the nanometre. */
export const isHalfRound = ({ shape, from, to, sagitta = 0 }: Span): boolean =>
  (shape === 'bead' || shape === 'cove') && nm(sagitta) >= Math.floor((nm(to) - nm(from)) / 2)
