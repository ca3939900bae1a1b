import { nm } from '../../units/length.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

interface SquareEnd {
  end: 'foot' | 'top'
  horn: number
}

function squareEnds({ spans, blank }: RouteContext): SquareEnd[] {
  const ends: SquareEnd[] = []
  if (spans[0]?.shape === 'square') ends.push({ end: 'foot', horn: blank.lengthParts.foot })
  if (spans.at(-1)?.shape === 'square') ends.push({ end: 'top', horn: blank.lengthParts.top })
  return ends
}

/** Ends left square: cut to length before turning, or left with a horn until glue-up. */
export function squareEndsCut(context: RouteContext): OperationDraft[] {
  const ends = squareEnds(context)
  if (ends.length === 0) return []
  const horned = ends.filter((end) => nm(end.horn) > 0)
  const cut = ends.filter((end) => nm(end.horn) === 0)
  const horn = horned[0]
  return [
    draftOf('square-ends', {
      name: [
        cut.length > 0 ? `Square the ${cut.map((end) => end.end).join(' and the ')} to length` : '',
        horn
          ? `${cut.length > 0 ? 'leave' : 'Leave'} a horn of ${context.text(horn.horn)} on the ${horned.map((end) => end.end).join(' and the ')}`
          : '',
      ]
        .filter((text) => text !== '')
        .join(', '),
      tool: 'crosscut saw with a stop',
      work: { count: ends.length, diameter: context.blank.side },
      why: horn
        ? 'The horn keeps the wood beside the joint from splitting out; it is trimmed after glue-up.'
        : 'A square end cannot be cut clean on the lathe once it is turned.',
    }),
  ]
}
