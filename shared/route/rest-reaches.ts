import type { Reach } from '../turning/tool-rest.ts'
import { nm } from '../units/length.ts'
import type { RouteInput } from './input.ts'
import type { PartShape } from './part-shape.ts'

/** Which end of the part is at the tailstock. */
export const tailOf = ({ blank }: Pick<RouteInput, 'blank'>): 'foot' | 'top' =>
  blank.lengthParts.drivenEnd === 'foot' ? 'top' : 'foot'

/** Distance from the tail end of the part. */
export function fromTailOf(
  input: Pick<RouteInput, 'blank'>,
  { spans, length }: PartShape,
): (x: number) => number {
  const from = spans[0]!.from
  return tailOf(input) === 'foot' ? (x) => x - from : (x) => from + length - x
}

/** From one part of a stick to the next, mm. */
export const pitchOf = (
  { blank: { stock, lengthParts } }: Pick<RouteInput, 'blank'>,
  { length }: PartShape,
): number => length + (stock.perBlank > 1 ? lengthParts.between / (stock.perBlank - 1) : 0)

/**
 * What the tool rest has to serve, each from one position of it if it is long enough: the features of every part of the
 * stick with the shoulders beside them, in order from the tail; mm from the tail end of the first part.
 */
export function restReaches(input: Pick<RouteInput, 'blank'>, shape: PartShape): Reach[] {
  const fromTail = fromTailOf(input, shape)
  const ofOne = [...shape.features, ...shape.shoulders.map(({ at }) => ({ from: at, to: at }))]
    .map(({ from, to }) => [fromTail(from), fromTail(to)].sort((a, b) => a - b) as [number, number])
    .filter(([from, to]) => nm(to) > nm(from))
    .sort((a, b) => a[0] - b[0])
  const pitch = pitchOf(input, shape)
  return Array.from({ length: input.blank.stock.perBlank }, (_, part) =>
    ofOne.map(([from, to]): Reach => [part * pitch + from, part * pitch + to]),
  ).flat()
}
