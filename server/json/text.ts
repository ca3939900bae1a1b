import { Problem } from '../../shared/problem.ts'

const LINE_END = 0x0a

/** Whether bytes are text in units of two bytes: they say so, or every other byte of a plain letter is 0. */
function isUtf16(bytes: Uint8Array): boolean {
  const [a, b, c, d] = bytes
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return true
  if (a === undefined || b === undefined || (a === 0) === (b === 0)) return false
  return c === undefined || d === undefined || ((c === 0) === (a === 0) && (d === 0) === (b === 0))
}

function isTextSoFar(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true })
    return true
  } catch {
    return false
  }
}

/** The line (from 1) where bytes stop being UTF-8 text, found by halving. */
function lineOfFault(bytes: Uint8Array): number {
  let [good, bad] = [0, bytes.length]
  while (bad - good > 1) {
    const middle = (good + bad) >>> 1
    if (isTextSoFar(bytes.subarray(0, middle))) good = middle
    else bad = middle
  }
  let line = 1
  for (let i = 0; i < good; i++) if (bytes[i] === LINE_END) line += 1
  return line
}

function refusal(message: string): Problem {
  return new Problem('not-json', `The input ${message}.`, [{ path: '', message }])
}

/**
 * The text that UTF-8 bytes hold; a byte order mark before it is dropped.
 * @throws Problem `not-json` when the bytes are no UTF-8 text, so that no letter is ever guessed at
 */
export function textOf(bytes: Uint8Array): string {
  if (isUtf16(bytes)) throw refusal('is not UTF-8 text but UTF-16; save it as UTF-8')
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    const line = lineOfFault(bytes)
    throw refusal(`is not UTF-8 text: line ${line} has bytes that are no letters; save it as UTF-8`)
  }
}
