import type { CutBoard, CutPlan, PlacedBlank } from '../../../shared/cutting/board.ts'
import { type LengthStyle, lengthFigure, lengthText, nm } from '../../../shared/units/length.ts'
import { countText, unitOf } from '../../prints/figures.ts'
import { paragraph } from './page.ts'

const run = (placed: PlacedBlank, style: LengthStyle): string =>
  `${placed.key} ${lengthFigure(placed.from, style)}…${lengthFigure(placed.to, style)}`

function boardLines(board: CutBoard, copies: number, style: LengthStyle): string[] {
  const size = `${lengthText(board.thickness, style)} × ${lengthText(board.width, style)} × ${lengthText(board.length, style)}`
  const how = board.process === 'rip-first' ? 'rip first' : 'crosscut first'
  const strips = (board.strips ?? []).map(
    ({ side, blanks }, i) =>
      `strip ${i + 1}, ${lengthText(side, style)} wide: ${blanks.map((placed) => run(placed, style)).join(', ')} ${unitOf(style)}`,
  )
  const sections = (board.sections ?? []).map(
    ({ from, to, blanks }, i) =>
      `section ${i + 1}, ${lengthFigure(from, style)}…${lengthText(to, style)}: ${blanks.map(({ key }) => key).join(', ')}`,
  )
  return [
    ...paragraph(`${countText(copies, 'board')} ${board.key} (${size}), ${how}:`, { lead: '  ' }),
    ...[...strips, ...sections].flatMap((text) => paragraph(text, { lead: '    ' })),
  ]
}

/** What two boards have in common when they are cut alike. */
const pattern = ({ key, process, strips, sections }: CutBoard): string =>
  JSON.stringify([
    key,
    process,
    strips?.map((s) => s.blanks.map((b) => [b.key, nm(b.from)])),
    sections?.map((s) => [nm(s.from), s.blanks.map((b) => b.key)]),
  ])

/** Boards with what comes out of them, like ones told once, and what could not be cut. */
export function cutLines(cut: CutPlan, style: LengthStyle): string[] {
  const alike = new Map<string, CutBoard[]>()
  for (const board of cut.boards) alike.set(pattern(board), [...(alike.get(pattern(board)) ?? []), board])
  return [
    ...[...alike.values()].flatMap((boards) => boardLines(boards[0]!, boards.length, style)),
    ...cut.unmet.flatMap(({ key, count }) =>
      paragraph(`${countText(count, 'blank')} ${key} cannot be cut from these boards.`, { lead: '  ! ' }),
    ),
  ]
}

/** A cutting plan for a person to read and print. */
export function cutText(cut: CutPlan, style: LengthStyle, currency?: string): string {
  const pay =
    currency === undefined ? `${cut.cost.toFixed(2)} board feet` : `${cut.cost.toFixed(2)} ${currency}`
  const least =
    currency === undefined
      ? `${cut.lowerBound.toFixed(2)} board feet`
      : `${cut.lowerBound.toFixed(2)} ${currency}`
  const lines = [
    'CUTTING PLAN',
    ...paragraph(
      `${countText(cut.boards.length, 'board')}, ${cut.boardFeetBought.toFixed(2)} board feet (${cut.boardFeetTallied.toFixed(2)} by tally), ` +
        `${(cut.yield * 100).toFixed(0)} % of it in blanks. Cost ${pay}${cut.proven ? ', proven the least' : `; the least it could be is ${least}`}.`,
    ),
    '',
    ...cutLines(cut, style),
  ]
  return `${lines.join('\n')}\n`
}
