import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Species } from '../shared/wood/species.ts'
import { packageRoot } from './package-root.ts'

/** The woods of the handbook's table. */
export const handbookWoods: Species[] = JSON.parse(
  readFileSync(join(packageRoot, 'seed', 'species.json'), 'utf8'),
)
