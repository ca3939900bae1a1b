import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder with package.json, seen from the sources and from `dist/` alike. */
export const packageRoot: string = (() => {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'package.json'))) folder = dirname(folder)
  return folder
})()

/** Version of the program, kept with every plan it freezes. */
export const version: string = JSON.parse(readFileSync(join(packageRoot, 'package.json'), 'utf8')).version
