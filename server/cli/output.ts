import { writeFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { badInput } from '../../shared/problem.ts'

/** Where a verb speaks; tests listen in. */
export interface Speech {
  out: (text: string) => void
  err: (text: string) => void
}

export const aloud: Speech = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
}

/** What steers a terminal or turns the order of letters round: C0 and C1 controls, bidirectional overrides. */
const STEERING = /[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu

const writtenOut = (mark: string): string =>
  mark === '\n' ? '\\n' : mark === '\t' ? '\\t' : `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`

/**
 * A name as it may be shown on one line: what would steer a terminal is written out as JSON writes it, so that
 * JSON stays the same JSON.
 */
export const shownPlainly = (text: string): string => text.replace(STEERING, writtenOut)

/** A speech in which nothing but line ends steers the terminal, whatever names were entered. */
export const safely = ({ out, err }: Speech): Speech => {
  const lines = (text: string) => text.split('\n').map(shownPlainly).join('\n')
  return { out: (text) => out(lines(text)), err: (text) => err(lines(text)) }
}

export const asJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

/**
 * Writes a file where the person asked for it.
 * @throws Problem `bad-input` when that cannot be done there
 */
export async function writeOut(
  name: string,
  here: string,
  bytes: string | Buffer,
  flag = 'w',
): Promise<void> {
  try {
    await writeFile(resolve(here, name), bytes, { flag })
  } catch (error) {
    throw badInput([{ path: name, message: `cannot be written: ${(error as Error).message}` }])
  }
}
