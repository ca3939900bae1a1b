import type { RackBoard } from '../shared/contract/board.ts'
import type { CutOrder } from '../shared/cutting/board.ts'
import type { PutBack } from '../shared/cutting/pick.ts'
import type { YardTerms } from '../shared/cutting/yard-terms.ts'
import type { Units } from '../shared/units/length.ts'

/** What one job needs from the yard, as it was when the server was last reached. */
export interface YardNeed {
  job: string
  name: string
  /** Its batch is in work already. */
  started?: true
  species: string
  /** What the wood is called. */
  wood: string
  /** What is sold for it: nominal, and its rough thickness in mm. */
  nominal?: string
  /** Planed on two sides. */
  surfaced?: true
  thickness: number
  sap: 'none' | 'allowed'
  /** How many of the blanks in its order are spares, layers counted as blanks. */
  spares?: number
  /** The order of the job's plan; of its boards only those on hand. */
  order: CutOrder
}

/** A board at the yard: what the rack will know of it, and what only the yard does. */
export interface PulledBoard {
  /** What is chalked on it. */
  number: number
  /** As it would stand on the rack; lengths mm. */
  board: RackBoard
  /** What it is sold as where its thickness was chosen by quarters. */
  nominal?: string
  /** Taken, whatever the search says. */
  taken?: true
  /** It went back to the yard's stack. */
  back?: true
}

/** What was done last, to be taken back: the boards it changed as they were, and how the pile lay. */
interface Step {
  label: string
  was: PulledBoard[]
  pile: string[]
}

/** The boards of one visit to a yard, in the order they lie on the pile, the last on top. */
export interface YardTally {
  id: string
  /** The day it was begun, `25 Nov`: what its boards are called by, whatever the tally is renamed to. */
  day?: string
  name: string
  units: Units
  currency: string
  needs: YardNeed[]
  /** The wood of a tally that is for no job. */
  species?: string
  /** What this yard sells by. */
  terms?: YardTerms
  grade?: string
  boards: PulledBoard[]
  steps: Step[]
  /** When the boards were bought, ISO 8601. */
  bought?: string
  changedAt: string
}

/** Steps that can be taken back. */
const MOST_STEPS = 40

/**
 * What a board is called on the rack, `25 Nov 5 (3fa9c1)`: the day, the number chalked on it, and the mark of its
 * tally, which no other has. It never changes, so that the board is stored once however often it is sent.
 */
export const boardKey = ({ id, day }: Pick<YardTally, 'id' | 'day'>, number: number): string =>
  day === undefined ? `${id}-${number}` : `${day} ${number} (${id})`

/** The wood of a tally: that of its jobs, else as chosen. */
export const speciesOf = ({ needs, species }: YardTally): string | undefined => needs[0]?.species ?? species

/** The boards that lie on the pile now. */
export const onPile = ({ boards }: YardTally): PulledBoard[] => boards.filter(({ back }) => !back)

const pileOf = (boards: readonly PulledBoard[]): string[] => boards.map(({ board }) => board.key)

function stepped(tally: YardTally, label: string, boards: PulledBoard[]): YardTally {
  const now = new Map(boards.map((pulled) => [pulled.board.key, pulled]))
  const was = tally.boards.filter((pulled) => now.get(pulled.board.key) !== pulled)
  const steps = [...tally.steps, { label, was, pile: pileOf(tally.boards) }].slice(-MOST_STEPS)
  return { ...tally, boards, steps }
}

/** A board without its place in a tally. */
export type NewBoard = Omit<PulledBoard, 'number' | 'board'> & { board: Omit<RackBoard, 'key'> }

/** The number of the next board. */
export const nextNumber = ({ boards }: Pick<YardTally, 'boards'>): number =>
  1 + Math.max(0, ...boards.map(({ number }) => number))

/** The tally with one more board on top. */
export function withBoard(tally: YardTally, { board, ...more }: NewBoard): YardTally {
  const number = nextNumber(tally)
  const pulled = { number, ...more, board: { ...board, key: boardKey(tally, number) } }
  return stepped(tally, `board ${number}`, [...tally.boards, pulled])
}

/** The tally with a board changed; it stays where it lies. */
export function withChange(tally: YardTally, number: number, change: (old: PulledBoard) => PulledBoard) {
  const boards = tally.boards.map((pulled) => (pulled.number === number ? change(pulled) : pulled))
  return stepped(tally, `change of board ${number}`, boards)
}

/** The tally without a board. */
export const withoutBoard = (tally: YardTally, number: number): YardTally =>
  stepped(
    tally,
    `taking out board ${number}`,
    tally.boards.filter((pulled) => pulled.number !== number),
  )

/**
 * The tally once the boards went back: they are out of the pile, the kept ones that were laid aside lie as they were
 * laid, the first of them lowest.
 */
export function restacked(tally: YardTally, { lifts, stay }: PutBack): YardTally {
  const byKey = new Map(tally.boards.map((pulled) => [pulled.board.key, pulled]))
  const named = (keys: string[]) => keys.flatMap((key) => byKey.get(key) ?? [])
  const aside = lifts.filter(({ to }) => to === 'aside').map(({ key }) => key)
  const back = lifts.filter(({ to }) => to === 'back').map(({ key }) => key)
  const lying = named([...stay, ...aside])
  const before = tally.boards.filter((pulled) => pulled.back)
  const gone = named(back).map((pulled): PulledBoard => ({ ...pulled, back: true }))
  const known = new Set([...lying, ...before].map(({ board }) => board.key).concat(back))
  // What another page put on the pile meanwhile lies on top.
  const later = tally.boards.filter(({ board }) => !known.has(board.key))
  const count = back.length === 1 ? 'a board' : `${back.length} boards`
  return stepped(tally, `putting back ${count}`, [...before, ...gone, ...lying, ...later])
}

/** The tally before what was done last; the same where nothing was. */
export function undone(tally: YardTally): YardTally {
  const step = tally.steps.at(-1)
  if (!step) return tally
  const byKey = new Map([...tally.boards, ...step.was].map((pulled) => [pulled.board.key, pulled]))
  return {
    ...tally,
    boards: step.pile.flatMap((key) => byKey.get(key) ?? []),
    steps: tally.steps.slice(0, -1),
  }
}
