/** Kinds of turning tool. */
export type TurningToolKind = 'roughing-gouge' | 'spindle-gouge' | 'skew' | 'parting' | 'scraper'

/** A bevel is about so many times as long as the blade is thick. Milton & Wohlers (1919) ch. III. */
export const BEVEL_OVER_THICKNESS = 2

/** A skew’s edge leans so far from square, degrees. Milton & Wohlers (1919) ch. III, read as off square. */
export const SKEW_EDGE = 20

/** Between the two bevels of a parting tool, degrees. Milton & Wohlers (1919) ch. III. */
export const PARTING_ANGLE = 50

const degrees = (radians: number): number => (radians * 180) / Math.PI

/**
 * Angle of an edge in degrees from the length of its bevel, measured along it, over the thickness of the blade;
 * with two equal bevels the angle between them.
 *
 * @example bevelAngle(2) // 30
 * @example bevelAngle(2, 2) // 28.9550244
 */
export function bevelAngle(lengthOverThickness: number, bevels: 1 | 2 = 1): number {
  return degrees(bevels * Math.asin(1 / (bevels * lengthOverThickness)))
}

/** The angle each kind is ground to, whole degrees: between the bevels of skew and parting tool. */
export const grindingAngles: Record<TurningToolKind, number> = {
  'roughing-gouge': Math.round(bevelAngle(BEVEL_OVER_THICKNESS)),
  'spindle-gouge': Math.round(bevelAngle(BEVEL_OVER_THICKNESS)),
  skew: Math.round(bevelAngle(BEVEL_OVER_THICKNESS, 2)),
  parting: PARTING_ANGLE,
  scraper: Math.round(bevelAngle(BEVEL_OVER_THICKNESS)),
}
