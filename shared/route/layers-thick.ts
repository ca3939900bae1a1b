import { nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'

/** What the layers of a glue-up are planed to: all alike, or the middle one otherwise, that its lines keep out of necks. */
export function layersThick({
  blank,
  layers,
  text,
}: Pick<RouteContext, 'blank' | 'layers' | 'text'>): string {
  const { middle, outer } = blank.glueUp ?? { middle: blank.side / layers, outer: blank.side / layers }
  return nm(middle) === nm(outer)
    ? `none under ${text(blank.side / layers)} thick`
    : `the middle one ${text(middle)} thick, ${layers === 3 ? 'the two others' : 'the others'} none under ${text(outer)}`
}
