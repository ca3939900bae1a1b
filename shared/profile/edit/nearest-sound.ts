import { mmOfNm, nm } from '../../units/length.ts'
import type { Station } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import { refusalOf } from './accepted.ts'
import { type Snap, stepOf } from './snap.ts'

/** A value that was allowed, and what stopped it short of the one wanted. */
interface Found {
  value: number
  note?: { note: string }
}

/**
 * The value nearest to the one wanted that makes a sound part, on the way from the one there is, in steps of the grid.
 * @throws Problem `bad-input` where not even the value there is makes one
 */
export function nearestSound(
  present: number | undefined,
  wanted: number,
  snap: Snap,
  made: (value: number) => Station[],
): Found {
  const refusal = refusalOf(made(wanted))
  if (!refusal) return { value: wanted }
  if (present === undefined || refusalOf(made(present))) throw refusal
  const [step, way] = [nm(stepOf(snap)), nm(present) - nm(wanted)]
  const valueAt = (k: number): number => {
    const moved = Math.min(k * step, Math.abs(way))
    return moved === Math.abs(way) ? present : mmOfNm(nm(wanted) + Math.sign(way) * moved)
  }
  let [refusedAt, soundAt] = [0, Math.ceil(Math.abs(way) / step)]
  while (soundAt - refusedAt > 1) {
    const middle = (soundAt + refusedAt) >> 1
    if (refusalOf(made(valueAt(middle)))) refusedAt = middle
    else soundAt = middle
  }
  const value = valueAt(soundAt)
  const { message } = refusalOf(made(valueAt(refusedAt)))?.errors[0] ?? refusal.errors[0]!
  return { value, note: { note: `Held at ${sizeText(value)}: beyond, a size ${message}.` } }
}
