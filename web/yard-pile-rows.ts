import type { CutOrder } from '../shared/cutting/board.ts'
import { shortfallOf } from '../shared/cutting/pick.ts'
import type { LengthStyle } from '../shared/units/length.ts'
import { moneyText } from '../shared/units/money.ts'
import { boardFeetText } from './elements/amounts.ts'
import { type Choice, costOf, feetOf } from './yard-order.ts'
import type { PulledBoard, YardTally } from './yard-tally.ts'
import { boardWords, crookWords, defectWords, shortfallWords } from './yard-words.ts'

/** One board of the pile, in words. */
export interface PileRow {
  number: number
  size: string
  /** What it costs and holds, e.g. `5.00 bd ft · 47.50 USD`. */
  worth: string
  defects: readonly string[]
  /** `keep` and `back` by the search, `taken` by the person, nothing before there is an answer; `gone` went back. */
  fate: 'keep' | 'back' | 'taken' | 'gone' | ''
  /** Why nothing can come from it. */
  caution: string
}

function fateOf(pulled: PulledBoard, tally: YardTally, choice: Choice | undefined): PileRow['fate'] {
  if (pulled.back) return 'gone'
  if (pulled.taken) return 'taken'
  // Boards too few to do are all kept: the next one may make them enough.
  if (tally.bought || !choice || choice.missing > 0) return ''
  return choice.keep.some(({ number }) => number === pulled.number) ? 'keep' : 'back'
}

/**
 * The boards of a tally in words: those on the pile from the top down, then those that went back.
 * @param wanted what the boards are for; nothing where they are only counted
 */
export function pileRows(
  tally: YardTally,
  {
    choice,
    wanted,
    style,
  }: { choice?: Choice | undefined; wanted?: CutOrder | undefined; style: LengthStyle },
): PileRow[] {
  const isPriced = tally.boards.some((pulled) => costOf(pulled, tally) !== undefined)
  const rows = [...tally.boards].reverse().map((pulled): PileRow => {
    const { board } = pulled
    const minor = costOf(pulled, tally)
    const cost =
      minor !== undefined ? ` · ${moneyText(minor, tally.currency)}` : isPriced ? ' · no price yet' : ''
    const shortfall = wanted && !pulled.back ? shortfallOf(board, wanted) : undefined
    return {
      number: pulled.number,
      size: boardWords(pulled, style),
      worth: `${boardFeetText(feetOf(pulled, tally))}${cost}`,
      defects: [
        ...(board.defects ?? []).map((defect) => defectWords(defect, board, style)),
        ...(board.crook ? [crookWords(board.crook, style)] : []),
      ],
      fate: fateOf(pulled, tally, choice),
      caution: shortfall ? shortfallWords(shortfall, style) : '',
    }
  })
  return [...rows.filter(({ fate }) => fate !== 'gone'), ...rows.filter(({ fate }) => fate === 'gone')]
}
