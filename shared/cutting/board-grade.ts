import { inches, nm } from '../units/length.ts'
import { gradeNames, type yardGrades } from './grade-names.ts'

export type YardGrade = (typeof yardGrades)[number]

/** All graded boards: 3A and 3B besides, which squares clear on four sides are hardly found in. */
export type BoardGrade = YardGrade | '3A' | '3B'

/** What a grade promises of a board: NHLA standard grades, as a grade chart and two grade guides give them (read). */
export interface GradeRule {
  name: string
  /** Least board: width in inches, length in feet. */
  leastBoard: [number, number]
  /** Least cuttings, width in inches by length in feet: one of them or larger. */
  leastCuttings: [number, number][]
  /** Clear-face cuttings (sound ones for 3B), twelfths of the surface measure. */
  twelfths: number
  /** Most cuttings to reach that from a surface measure; absent where any number will do. */
  cuts?: { add: number; per: number; most: number }
  /** One cutting more may be taken between these surface measures, for so many twelfths. */
  extra?: { from: number; to: number; twelfths: number }
}

const FAS: Omit<GradeRule, 'name' | 'leastBoard'> = {
  leastCuttings: [
    [4, 5],
    [3, 7],
  ],
  twelfths: 10,
  cuts: { add: 0, per: 4, most: 4 },
  extra: { from: 6, to: 15, twelfths: 11 },
}

export const gradeRules: Record<BoardGrade, GradeRule> = {
  FAS: { name: gradeNames.FAS, leastBoard: [6, 8], ...FAS },
  // The better face is FAS, the other No. 1 Common or better.
  Selects: { name: gradeNames.Selects, leastBoard: [4, 6], ...FAS },
  '1C': {
    name: gradeNames['1C'],
    leastBoard: [3, 4],
    leastCuttings: [
      [4, 2],
      [3, 3],
    ],
    twelfths: 8,
    cuts: { add: 1, per: 3, most: 5 },
    extra: { from: 3, to: 10, twelfths: 9 },
  },
  '2A': {
    name: gradeNames['2A'],
    leastBoard: [3, 4],
    leastCuttings: [[3, 2]],
    twelfths: 6,
    cuts: { add: 0, per: 2, most: 7 },
    extra: { from: 2, to: 7, twelfths: 8 },
  },
  '3A': { name: 'No. 3A Common', leastBoard: [3, 4], leastCuttings: [[3, 2]], twelfths: 4 },
  // Sound cuttings from 1-1/2 in wide that hold 36 sq in: 2 ft long at that width.
  '3B': { name: 'No. 3B Common', leastBoard: [3, 4], leastCuttings: [[1.5, 2]], twelfths: 3 },
}

/** Share of a board's surface measure that a grade promises in clear-face cuttings, not in clear squares. */
export const gradeYield = (grade: BoardGrade): number => gradeRules[grade].twelfths / 12

/**
 * Cutting units (1 in by 1 ft of clear face) a board of this surface measure must yield for the grade, and in how
 * many cuttings at most; no `cuts` where any number will do.
 *
 * @example gradePromise('FAS', 8) // { units: 80, cuts: 2 }
 * @example gradePromise('3A', 8) // { units: 32 }
 */
export function gradePromise(grade: BoardGrade, surfaceMeasure: number): { units: number; cuts?: number } {
  const { twelfths, cuts } = gradeRules[grade]
  const units = surfaceMeasure * twelfths
  if (!cuts) return { units }
  return { units, cuts: Math.max(1, Math.min(cuts.most, Math.floor((surfaceMeasure + cuts.add) / cuts.per))) }
}

/** How the cuttings a grade promises suit a blank: all of its least cuttings hold one, some do, or none does. */
export type GradeFit = 'all' | 'some' | 'none'

/**
 * Whether the least cuttings of a grade hold a blank of this width and length, mm. Where none does, the blank may
 * still be found, but the grade does not promise it.
 *
 * @example gradeFit('FAS', { sawn: 44.45, length: 762 }) // 'all'
 * @example gradeFit('1C', { sawn: 44.45, length: 762 }) // 'some'
 * @example gradeFit('2A', { sawn: 44.45, length: 762 }) // 'none'
 */
export function gradeFit(grade: BoardGrade, blank: { sawn: number; length: number }): GradeFit {
  const { leastCuttings } = gradeRules[grade]
  const holding = leastCuttings.filter(
    ([width, feet]) => nm(blank.sawn) <= nm(inches(width)) && nm(blank.length) <= nm(inches(12 * feet)),
  )
  return holding.length === 0 ? 'none' : holding.length === leastCuttings.length ? 'all' : 'some'
}
