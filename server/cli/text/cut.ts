import type { CutBoard, CutPlan, Section, Strip } from '../../../shared/cutting/board.ts'
import { type LengthStyle, lengthFigure, lengthText, nm } from '../../../shared/units/length.ts'
import { countText, sizeText } from '../../prints/figures.ts'
import { paragraph } from './page.ts'
import { alike, numbered, runsOf } from './runs.ts'

const place = ({ from, to }: { from: number; to: number }, style: LengthStyle): string =>
  `at ${lengthFigure(from, style)}…${lengthText(to, style)}`

/** What comes out of a strip, neighbours of one kind told together. */
function stripText({ side, blanks }: Strip, style: LengthStyle): string {
  const runs = runsOf(blanks.map(({ key, from, to }) => ({ from, to, says: key })))
  const texts = runs.map(
    (run) => `${run.numbers.length} × ${run.says} ${lengthText(run.each, style)}, ${place(run, style)}`,
  )
  return `${lengthText(side, style)} wide: ${texts.join('; ')}`
}

function sectionText({ from, to, blanks }: Section, style: LengthStyle): string {
  const texts = blanks.map((blank) => {
    const width = lengthText(blank.across[1] - blank.across[0], style)
    const length = blank.to - blank.from
    const trimmed = nm(length) < nm(to - from) ? `, trimmed to ${lengthText(length, style)}` : ''
    return `${blank.key} ${width} wide${trimmed}`
  })
  return [...alike(texts)].map(([text, places]) => `${places.length} × ${text}`).join('; ')
}

function sectionLines(sections: readonly Section[], style: LengthStyle): string[] {
  const runs = runsOf(sections.map((each) => ({ ...each, says: sectionText(each, style) })))
  return runs.map((run) => {
    const where = `${lengthText(run.each, style)} long, ${place(run, style)}`
    return `${numbered('section', run.numbers)}, ${where}: ${run.says}`
  })
}

function stripLines(strips: readonly Strip[], style: LengthStyle): string[] {
  const texts = alike(strips.map((strip) => stripText(strip, style)))
  return [...texts].map(([text, places]) => {
    const numbers = places.map((i) => i + 1)
    return `${numbered('strip', numbers)}, ${text}`
  })
}

/** A board with what comes out of it, as lines to be broken to the page. */
function boardTexts(board: CutBoard, style: LengthStyle): string[] {
  const size = sizeText([board.thickness, board.width, board.length], style)
  const how = board.process === 'rip-first' ? 'rip first' : 'crosscut first'
  return [
    `${board.key} (${size}), ${how}:`,
    ...stripLines(board.strips ?? [], style),
    ...sectionLines(board.sections ?? [], style),
  ]
}

/** Boards with what comes out of them, like ones told once, and what could not be cut. */
export function cutLines(
  cut: CutPlan,
  style: LengthStyle,
  why = 'cannot be cut from these boards',
): string[] {
  const boards = alike(cut.boards.map((board) => JSON.stringify(boardTexts(board, style))))
  return [
    ...[...boards].flatMap(([text, places]) => {
      const [board, ...inside] = JSON.parse(text) as string[]
      return [
        ...paragraph(`${countText(places.length, 'board')} ${board}`, { lead: '  ' }),
        ...inside.flatMap((line) => paragraph(line, { lead: '    ' })),
      ]
    }),
    ...cut.unmet.flatMap(({ key, count }) =>
      paragraph(`${countText(count, 'blank')} ${key} ${why}.`, { lead: '  ! ' }),
    ),
  ]
}

/** How a cutting plan is told. */
export interface CutText {
  style: LengthStyle
  /** Of the boards’ prices; without it board feet count. */
  currency?: string
  /** Whether the order named any board. */
  boardsGiven: boolean
}

function summary(cut: CutPlan, currency?: string): string {
  const unit = currency ?? 'board feet'
  const least = cut.proven
    ? ', proven the least'
    : `; the least it could be is ${cut.lowerBound.toFixed(2)} ${unit}`
  const onHand =
    cut.boardFeetOnHand === undefined ? '' : `${cut.boardFeetOnHand.toFixed(2)} board feet on hand, bought `
  return (
    `${countText(cut.boards.length, 'board')}, ${onHand}${cut.boardFeetBought.toFixed(2)} board feet (${cut.boardFeetTallied.toFixed(2)} by tally), ` +
    `${(cut.yield * 100).toFixed(0)} % of it in blanks. Cost ${cut.cost.toFixed(2)} ${unit}${least}.`
  )
}

/** A cutting plan for a person to read and print. */
export function cutText(cut: CutPlan, { style, currency, boardsGiven }: CutText): string {
  const lines = boardsGiven
    ? [...paragraph(summary(cut, currency)), '', ...cutLines(cut, style)]
    : [
        ...paragraph('No boards were given, so every blank is still to be found a board.'),
        '',
        ...cutLines(cut, style, 'still to be cut'),
      ]
  return `${['CUTTING PLAN', ...lines].join('\n')}\n`
}
