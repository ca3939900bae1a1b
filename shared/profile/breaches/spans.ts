import { nm } from '../../units/length.ts'
import type { Span } from '../profile.ts'
import { diametersOf } from '../radius.ts'
import { sizeText } from '../size-text.ts'
import type { Found, PartLimits } from './found.ts'

const ARC_FIELD = { bead: 'rise', cove: 'depth' } as const

/** The deepest that a cove can be before it reaches the axis, mm, by halving. */
function deepest(cove: Span): number {
  let [sound, broken] = [0, cove.sagitta!]
  for (let round = 0; round < 40; round++) {
    const middle = (sound + broken) / 2
    if (diametersOf({ ...cove, sagitta: middle }).least > 0) sound = middle
    else broken = middle
  }
  return sound
}

/** What is wrong with the arc of one bead or cove: deeper than a half round, through the axis, beyond the thickest part. */
export function arcBreach(span: Span, { thicknessMax }: PartLimits): Found[] {
  const { index, shape, from, to, station } = span
  if (shape !== 'bead' && shape !== 'cove') return []
  const field = ARC_FIELD[shape]
  const say = (message: string): Found[] => [{ index, field, message }]
  const [wanted, most] = [station[field], Math.ceil((nm(to) - nm(from)) / 2)]
  if (wanted !== undefined && nm(wanted) > most) {
    return say(
      `is too much: the ${shape} at station ${index} is ${sizeText(to - from)} wide and at most a half round, ${sizeText((to - from) / 2)}; read ${sizeText(wanted)}`,
    )
  }
  // with an end diameter missing or refused there is nothing more to tell
  if (nm(span.d0) <= 0 || nm(span.d1) <= 0) return []
  const { greatest, least } = diametersOf(span)
  if (nm(least) <= 0) {
    const why =
      wanted === undefined ? `a half round ${sizeText(span.sagitta!)} deep` : `${sizeText(wanted)} deep`
    return say(
      `is too much: the cove at station ${index}, ${why}, cuts through the axis; make it less than ${sizeText(deepest(span))} deep, or the part thicker there`,
    )
  }
  if (nm(greatest) > nm(thicknessMax) && nm(greatest) > nm(Math.max(span.d0, span.d1))) {
    return say(
      `is too much: the ${shape} at station ${index} is ${sizeText(greatest)} across; a part can be at most ${sizeText(thicknessMax)} thick`,
    )
  }
  return []
}

/** Turned diameters that the largest square cannot hold, crests of beads among them. */
export function squareBreaches(spans: Span[]): Found[] {
  const sides = spans.filter((span) => span.shape === 'square').map((span) => span.d0)
  if (sides.length === 0) return []
  const largest = Math.max(...sides)
  const outside = (size: number): boolean => nm(size) > nm(largest)
  const remedy = `the largest square is ${sizeText(largest)}: make the square larger or the turning smaller`
  const ends = new Map<number, number>()
  const turned = spans.filter((span) => span.shape !== 'square')
  for (const { index, d0, d1 } of turned) ends.set(index, d0).set(index + 1, d1)
  const stations = [...ends]
    .filter(([, diameter]) => outside(diameter))
    .map(
      ([index, diameter]): Found => ({
        index,
        field: 'diameter',
        message: `is too much: the part is ${sizeText(diameter)} across at station ${index}; ${remedy}`,
      }),
    ) // prettier-ignore
  const crests = turned.flatMap((span): Found[] => {
    const { greatest } = diametersOf(span)
    if (!outside(greatest) || nm(greatest) <= nm(Math.max(span.d0, span.d1))) return []
    const message = `is too much: the ${span.shape} at station ${span.index} is ${sizeText(greatest)} across; ${remedy}`
    return [{ index: span.index, field: 'rise', message }]
  })
  return [...stations, ...crests]
}
