import type { OperationKind } from '../route/kinds.ts'
import type { ThreePoint } from './three-point.ts'
import type { Wait } from './time.ts'

/** Hours in which nothing can be done. Common practice, no source. */
const GLUE_CURE_HOURS = 24
const STRIPS_REST_HOURS = 16
/** Wet wood, rough-turned or in strips, at the least: four weeks. Two weighings a week apart decide, not the calendar. */
const DRY_HOURS = 4 * 7 * 24

/** How long waits take at the least, usually and at the most, as shares of their hours. Common practice, no source. */
const reaches: Record<'night' | 'glue' | 'drying' | 'coat', ThreePoint> = {
  night: { least: 0.75, usual: 1, most: 2 },
  // a cold shop
  glue: { least: 1, usual: 1, most: 2 },
  // thick stock, a damp season
  drying: { least: 1, usual: 1.5, most: 3 },
  // a cold or damp day, a thick coat
  coat: { least: 0.75, usual: 1, most: 2 },
}

function wait(name: string, hours: number, reach: keyof typeof reaches): Wait {
  const { least, usual, most } = reaches[reach]
  return {
    name,
    hours,
    reach: { least: least * hours, usual: usual * hours, most: most * hours },
    ...(reach === 'drying' && { isVague: true }),
  }
}

/**
 * What a batch must wait for: strips that spring before they are planed, glue that cures, wet wood and
 * coats that dry. `stripsDry`: strips lie until they are dry.
 *
 * @example waitsFor(['rip', 'glue'], { coats: 0, dryHours: 0 })[0].hours // 24
 */
export function waitsFor(
  kinds: OperationKind[],
  finish: { coats: number; dryHours: number },
  stripsDry = false,
): Wait[] {
  const waits: Wait[] = []
  if (stripsDry) waits.push(wait('strips dry, at least', DRY_HOURS, 'drying'))
  else if (kinds.includes('rest-strips')) waits.push(wait('ripped strips rest', STRIPS_REST_HOURS, 'night'))
  if (kinds.includes('glue')) waits.push(wait('glue cures', GLUE_CURE_HOURS, 'glue'))
  if (kinds.includes('dry')) waits.push(wait('rough-turned wood dries, at least', DRY_HOURS, 'drying'))
  if (finish.coats > 0) waits.push(wait('finish dries', finish.coats * finish.dryHours, 'coat'))
  return waits
}
