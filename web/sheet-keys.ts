import type { ShapeName } from '../shared/profile/profile.ts'
import { readLength, type Units } from '../shared/units/length.ts'

/** The letter that gives a span its shape, as typed behind a diameter. */
export const shapeKeys: readonly { key: string; shape: ShapeName }[] = [
  { key: 's', shape: 'straight' },
  { key: 'b', shape: 'bead' },
  { key: 'c', shape: 'cove' },
  { key: 'o', shape: 'ovolo' },
  { key: 'v', shape: 'cavetto' },
  { key: 'g', shape: 'ogee' },
  { key: 'u', shape: 'curve' },
  { key: 'q', shape: 'square' },
]

/** What a stroke in the diameter's field meant: the figure that stays in it, and what its letter asked for. */
export interface Typed {
  text: string
  shape?: ShapeName
  /** A second diameter at 90° is wanted. */
  second?: true
  /** The check mark is set, or taken away. */
  check?: true
  /** The letter before was no shape but began a unit (cm): the shape from before it counts again. */
  takenBack?: true
}

/**
 * Tells a letter from the figure before it. A letter means something only behind a whole figure or in an empty
 * field, so that units are typed as ever; the `c` of `cm` is told from a cove by the `m` behind it, for which the
 * text that the last letter left behind is needed.
 */
export function typedDiameter(text: string, units: Units, left?: { key: string; text: string }): Typed {
  const [letter, figure] = [text.slice(-1).toLowerCase(), text.slice(0, -1)]
  if (left?.key === 'c' && letter === 'm' && figure === left.text)
    return { text: `${figure.trim()} cm`, takenBack: true }
  if (figure.trim() !== '' && readLength(figure, units) === undefined) return { text }
  if (letter === 'c' && /in$/i.test(figure)) return { text }
  const shape = shapeKeys.find(({ key }) => key === letter)?.shape
  if (shape) return { text: figure, shape }
  if (letter === 'x' || letter === '*') return { text: figure, second: true }
  return letter === 'k' ? { text: figure, check: true } : { text }
}
