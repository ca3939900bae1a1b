import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

export const root = new URL('..', import.meta.url).pathname

/** Paths below `room` (relative to the top of the checkout) that end in `ending`, sorted. */
export function filesIn(room: string, ending = '.ts'): string[] {
  return readdirSync(join(root, room), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length))
    .sort()
}

export const textOf = (file: string): string => readFileSync(join(root, file), 'utf8')
