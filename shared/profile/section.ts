/**
 * A section across the axis: what a square of half side `half` and a circle of radius `radius` have in common
 * about one centre, mm. `half` is infinite where all is round, `radius` where all is square.
 */
export interface Section {
  half: number
  radius: number
}

/**
 * The round section of that radius, mm.
 *
 * @example roundSection(10) // { half: Infinity, radius: 10 }
 */
export const roundSection = (radius: number): Section => ({ half: Number.POSITIVE_INFINITY, radius })

/**
 * The square section of that side, mm.
 *
 * @example squareSection(40) // { half: 20, radius: Infinity }
 */
export const squareSection = (side: number): Section => ({ half: side / 2, radius: Number.POSITIVE_INFINITY })

/** Half the flat that is left of one side, mm; 0 where all is round. */
export function halfFlat({ half, radius }: Section): number {
  if (radius <= half) return 0
  return radius >= half * Math.SQRT2 ? half : Math.sqrt((radius - half) * (radius + half))
}

/** Angle of the circle that shows between two neighbouring flats, rad; a whole quarter where all is round. */
export function cornerAngle(section: Section): number {
  const flat = halfFlat(section)
  return flat === 0
    ? Math.PI / 2
    : flat === section.half
      ? 0
      : Math.PI / 2 - 2 * Math.atan2(flat, section.half)
}

/**
 * Area, mm².
 *
 * @example sectionArea(squareSection(40)) // 1600
 */
export function sectionArea(section: Section): number {
  if (section.radius <= section.half) return Math.PI * section.radius ** 2
  const flat = halfFlat(section)
  const [flats, corner] = [flat === 0 ? 0 : 4 * section.half * flat, cornerAngle(section)]
  return flats + (corner === 0 ? 0 : 2 * section.radius ** 2 * corner)
}

/**
 * Second moment of area about any diameter, mm⁴: πr⁴/4 for a round, side⁴/12 for a square.
 *
 * @example secondMoment(squareSection(12)) // 1728
 */
export function secondMoment(section: Section): number {
  if (section.radius <= section.half) return (Math.PI / 4) * section.radius ** 4
  const { half, radius } = section
  const [flat, corner] = [halfFlat(section), cornerAngle(section)]
  const flats = flat === 0 ? 0 : half ** 3 * flat * (1 + (flat / half) ** 2 / 3)
  return flats + (corner === 0 ? 0 : (radius ** 4 * corner) / 2)
}

/** Half the thickness across the flats, or of the round, mm. */
export const halfThickness = ({ half, radius }: Section): number => Math.min(half, radius)

/**
 * Section modulus for bending across the flats, mm³: πd³/32 for a round, side³/6 for a square. Strength in bending
 * goes with it. Elementary beam theory, as in Wood Handbook FPL-GTR-282 ch. 9 and Roark’s Formulas.
 *
 * @example sectionModulus(squareSection(6)) // 36
 */
export const sectionModulus = (section: Section): number => secondMoment(section) / halfThickness(section)

/** What two sections about one centre have in common. */
export const overlap = (a: Section, b: Section): Section => ({
  half: Math.min(a.half, b.half),
  radius: Math.min(a.radius, b.radius),
})

/**
 * Area of the face between two sections that meet at one place: all that lies in one but not in the other, mm².
 *
 * @example faceArea(squareSection(30), squareSection(50)) // 1600
 */
export function faceArea(a: Section, b: Section): number {
  return sectionArea(a) + sectionArea(b) - 2 * sectionArea(overlap(a, b))
}
