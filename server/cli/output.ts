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
