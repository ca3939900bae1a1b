/** Hardwood grades a yard is asked for (NHLA standard grades). */
export const yardGrades = ['FAS', 'Selects', '1C', '2A'] as const

/** What they are called. */
export const gradeNames: Record<(typeof yardGrades)[number], string> = {
  FAS: 'FAS',
  Selects: 'Selects',
  '1C': 'No. 1 Common',
  '2A': 'No. 2A Common',
}
