import type { OperationKind } from '../route/kinds.ts'
import type { Wait } from './time.ts'

/** Hours in which nothing can be done. Common practice, no source. */
const GLUE_CURE_HOURS = 24
const STRIPS_REST_HOURS = 16
/** Wet wood, rough-turned or in strips, at the least: four weeks. Two weighings a week apart decide, not the calendar. */
const DRY_HOURS = 4 * 7 * 24

/**
 * What a batch must wait for: strips that spring before they are planed, glue that cures, wet wood and
 * coats that dry. `stripsDry`: strips lie until they are dry.
 *
 * @example waitsFor(['rip', 'glue'], { coats: 0, dryHours: 0 }) // [{ name: 'glue cures', hours: 24 }]
 */
export function waitsFor(
  kinds: OperationKind[],
  finish: { coats: number; dryHours: number },
  stripsDry = false,
): Wait[] {
  const waits: Wait[] = []
  if (stripsDry) waits.push({ name: 'strips dry, at least', hours: DRY_HOURS })
  else if (kinds.includes('rest-strips')) waits.push({ name: 'ripped strips rest', hours: STRIPS_REST_HOURS })
  if (kinds.includes('glue')) waits.push({ name: 'glue cures', hours: GLUE_CURE_HOURS })
  if (kinds.includes('dry')) waits.push({ name: 'rough-turned wood dries, at least', hours: DRY_HOURS })
  if (finish.coats > 0) waits.push({ name: 'finish dries', hours: finish.coats * finish.dryHours })
  return waits
}
