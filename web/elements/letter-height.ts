/** From where a screen beside the lathe is read, mm: a step back from the work. Common practice, no source. */
export const LATHE_DISTANCE_MM = 1500

/** What a capital letter should span in the eye, minutes of arc: ISO 9241-303, legibility, the lower end of the advised 20′ to 22′; from memory. */
export const EASY_ARC = 20

/** What it must span at least: ISO 9241-303, 16′; from memory. */
export const LEAST_ARC = 16

/** The finest ruled screen held to: a phone 390 px wide is some 65 mm wide, others have larger px. Measured, common practice. */
const PX_PER_MM = 6

/** Height of capitals and figures in an em of the system's faces: from 0.70 upwards, read off their metrics from memory. */
const CAPITAL = 0.7

/**
 * Height that spans `arc` minutes of arc from `distance` away, in the unit of the distance: 8.7 mm for 20′ at 1.5 m.
 */
export const letterHeight = (distance: number, arc: number): number =>
  2 * distance * Math.tan((arc / 60 / 2) * (Math.PI / 180))

/** Size of type, px, whose capitals span `arc` minutes of arc from the lathe on the finest screen. */
export const latheType = (arc: number): number => (letterHeight(LATHE_DISTANCE_MM, arc) * PX_PER_MM) / CAPITAL
