import type { Handle } from './drawing-handles.ts'

/** What a person does in the drawing. Lengths mm. */
export type DrawingAct =
  | { act: 'pick'; index: number; extend: boolean }
  | { act: 'drag'; handle: Handle; at?: number; r?: number }
  | { act: 'drop' }
  | { act: 'cancel' }
  | { act: 'nudge'; field: 'at' | 'diameter' | 'size'; steps: number; merge: boolean }
  | { act: 'insert'; at: number }

/** Steps of the grid that an arrow key makes with Shift: eight 1/64 in are the 1/8 in of a rule. */
const LARGE = 8

type Pressed = Pick<KeyboardEvent, 'key' | 'altKey' | 'shiftKey' | 'repeat'>

function nudge({ key, altKey, shiftKey, repeat }: Pressed): DrawingAct | undefined {
  const along = { ArrowLeft: -1, ArrowRight: 1 }[key]
  const across = { ArrowDown: -1, ArrowUp: 1 }[key]
  const steps = (along ?? across ?? 0) * (shiftKey ? LARGE : 1)
  if (steps === 0) return undefined
  return {
    act: 'nudge',
    field: along !== undefined ? 'at' : altKey ? 'size' : 'diameter',
    steps,
    merge: repeat,
  }
}

function pick({ key, shiftKey }: Pressed, hand: number, last: number): DrawingAct | undefined {
  const to = { PageUp: hand + 1, PageDown: hand - 1, Home: 0, End: last }[key]
  return to === undefined
    ? undefined
    : { act: 'pick', index: Math.max(0, Math.min(last, to)), extend: shiftKey }
}

/** What a key does with the station at hand, of `last` + 1 stations; nothing for other keys. */
export const actOfKey = (event: Pressed, hand: number, last: number): DrawingAct | undefined =>
  nudge(event) ?? pick(event, hand, last)
