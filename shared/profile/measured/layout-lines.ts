import { badInput } from '../../problem.ts'
import { mmOfNm, nm } from '../../units/length.ts'
import { sizeText } from '../size-text.ts'

const LINES_MAX = 2_000

/**
 * Places of regular lines for laying out a plain taper, mm from the foot: every `pitch` from `from` on, short of
 * `to`; both ends are places of their own already.
 *
 * @throws Problem `bad-input` for a pitch of nothing, ends out of order, or more than 2,000 lines
 * @example layoutLines(100, 300, 50) // [150, 200, 250]
 */
export function layoutLines(from: number, to: number, pitch: number): number[] {
  const say = (path: string, message: string) => badInput([{ path, message }])
  if (!(nm(pitch) > 0)) throw say('pitch', `must be more than 0; read ${sizeText(pitch)}`)
  if (!(nm(to) > nm(from))) {
    throw say('to', `must lie above ${sizeText(from)}, where the lines start; read ${sizeText(to)}`)
  }
  const count = Math.ceil((nm(to) - nm(from)) / nm(pitch)) - 1
  if (count > LINES_MAX) {
    throw say(
      'pitch',
      `must be larger: ${sizeText(pitch)} makes ${count} lines; at most ${LINES_MAX} are allowed`,
    )
  }
  return Array.from({ length: count }, (_, i) => mmOfNm(nm(from) + (i + 1) * nm(pitch)))
}
