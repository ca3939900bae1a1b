import type { Migration } from 'kysely'
import * as first from './0001_first.ts'
import * as takenBack from './0002_taken_back.ts'
import * as library from './0003_library.ts'
import * as reservedBoards from './0004_reserved_boards.ts'
import * as edgesAndWeighings from './0005_edges_and_weighings.ts'

/** Every migration by its name, listed by hand; they run in the order of their names. */
export const migrations: Record<string, Migration> = {
  '0001_first': first,
  '0002_taken_back': takenBack,
  '0003_library': library,
  '0004_reserved_boards': reservedBoards,
  '0005_edges_and_weighings': edgesAndWeighings,
}
