import { badInput, Problem } from '../shared/problem.ts'
import { faultOf } from './json/fault.ts'
import { DEPTH_MAX, scanMembers } from './json/members.ts'
import { textOf } from './json/text.ts'

/** The largest input taken, in bytes. */
export const INPUT_BYTES_MAX = 5_000_000

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    const { line, column, expected, read } = faultOf(text)
    const message = `is not JSON at line ${line}, column ${column}: ${expected} must stand there; read ${read}`
    throw new Problem('not-json', `The input ${message}.`, [{ path: '', message }])
  }
}

/**
 * The value of JSON text. A field given twice is refused, for one of its values would be lost.
 * @throws Problem `not-json` with line and column, or `bad-input` when it is nested too deep or gives a field twice
 */
export function readJson(text: string): unknown {
  if (text.trim() === '')
    throw new Problem('not-json', 'The input is empty; JSON is needed.', [
      { path: '', message: 'is empty; JSON is needed' },
    ])
  const value = parsed(text)
  const { tooDeep, twice } = scanMembers(text)
  if (tooDeep) {
    const message = `is nested too deep; at most ${DEPTH_MAX} lists and objects may stand inside each other`
    throw new Problem('bad-input', `The input ${message}.`, [{ path: '', message }])
  }
  if (twice.length > 0) throw badInput(twice)
  return value
}

/**
 * The value of JSON in UTF-8 bytes, as a file or a body brings it.
 * @throws Problem as `readJson` does, and `not-json` when the bytes are no UTF-8 text
 */
export function readJsonBytes(bytes: Uint8Array): unknown {
  return readJson(textOf(bytes))
}
