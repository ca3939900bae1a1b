import type { Station } from '../../../../shared/profile/profile.ts'
import { radiusAt } from '../../../../shared/profile/radius.ts'
import { near } from '../../../near.ts'
import { oneSpan } from '../build.ts'

type One = [
  shape: Parameters<typeof oneSpan>[0],
  width: number,
  d0: number,
  d1: number,
  more?: Partial<Station>,
]

/** Holds the radius of one span to values at positions, mm. */
export function radii(span: One, expected: Record<number, number>): void {
  const part = oneSpan(...span)
  for (const [x, r] of Object.entries(expected))
    near(radiusAt(part, Number(x)), r, 1e-12, `${span[0]} at ${x}`)
}
