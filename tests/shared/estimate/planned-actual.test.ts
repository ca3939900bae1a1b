import { describe, expect, it } from 'vitest'
import {
  type LoggedStep,
  type PlannedTimes,
  plannedAgainstActual,
  plannedSteps,
} from '../../../shared/estimate/planned-actual.ts'

const planned = (more: Partial<PlannedTimes> = {}): PlannedTimes => ({
  operations: [
    { key: 'rip', kind: 'rip', name: 'Rip', minutesEach: 0, learns: false, factor: 1 },
    { key: 'bead-s3', kind: 'bead', name: 'Bead', minutesEach: 8, learns: true, factor: 1 },
    { key: 'pack', kind: 'pack', name: 'Pack', minutesEach: 2, learns: false, factor: 1 },
  ],
  perBlank: 1,
  learningRate: 0.8,
  minuteFactors: {},
  ...more,
})
const step = (
  piece: number,
  operation: string,
  minutes?: number,
  at = `2026-06-01T08:0${piece}:00Z`,
): LoggedStep => ({
  piece,
  operation,
  at,
  ...(minutes !== undefined && { minutes }),
})

describe('plannedSteps', () => {
  it('sets each time against the plan at its place on the learning curve', () => {
    // Unit form at 80 %: the 10th takes 10^log2(0.8) = 0.476510 of the first (handbook tables: 0.4765), the 2nd 0.8,
    // the 4th 0.64; 8 minutes are those of the 10th.
    const steps = [1, 2, 3, 4].map((piece) => step(piece, 'bead-s3', 9))
    const [first, second, , fourth] = plannedSteps(steps, planned())
    expect(first!.planned).toBeCloseTo(8 / 0.4765, 2)
    expect(second!.planned / first!.planned).toBeCloseTo(0.8, 12)
    expect(fourth!.planned / first!.planned).toBeCloseTo(0.64, 12)
  })

  it('goes by averages where the shop’s rate is of the average', () => {
    // The marginal minutes by averages: T1 (n^(1+b) − (n−1)^(1+b)), Wright 1936; at 80 % the second is 2 × 0.8 − 1.
    const steps = [1, 2].map((piece) => step(piece, 'bead-s3', 9))
    const [first, second] = plannedSteps(steps, planned({ learningForm: 'average' }))
    expect(second!.planned / first!.planned).toBeCloseTo(0.6, 12)
    const b = Math.log(0.8) / Math.log(2)
    expect(first!.planned).toBeCloseTo(8 / (10 ** (1 + b) - 9 ** (1 + b)), 9)
  })

  it('counts places by what was done first, timed or not, whatever the numbers', () => {
    const [only] = plannedSteps([step(7, 'bead-s3', undefined, '1'), step(2, 'bead-s3', 9, '2')], planned())
    expect(only).toMatchObject({ piece: 2, minutes: 9 })
    expect(only!.planned).toBeCloseTo((0.8 * 8) / 0.4765, 2)
  })

  it('expects the same of every piece where practice does not quicken', () => {
    const steps = [1, 2].map((piece) => step(piece, 'pack', 2.5))
    expect(plannedSteps(steps, planned()).map((one) => one.planned)).toEqual([2, 2])
  })

  it('shares the minutes of a stick among its pieces', () => {
    expect(plannedSteps([step(1, 'pack', 1)], planned({ perBlank: 4 }))[0]!.planned).toBe(0.5)
  })

  it('tells usual minutes without the factor that the plan was made with', () => {
    const [bead, , pack] = planned().operations
    const told = planned({
      operations: [
        { ...bead!, factor: 1.6 },
        { ...pack!, factor: 0.5 },
      ],
    })
    expect(plannedSteps([step(1, 'pack', 2)], told)[0]).toMatchObject({ planned: 2, usual: 4 })
    const { factor: _, ...older } = pack!
    const before = planned({ operations: [older], minuteFactors: { pack: 2 } })
    expect(plannedSteps([step(1, 'pack', 2)], before)[0]).toMatchObject({ planned: 2, usual: 1 })
  })

  it('counts a piece that was logged twice once, with its latest time', () => {
    const steps = [step(1, 'pack', 2, '1'), step(1, 'pack', 3, '2'), step(1, 'pack', undefined, '3')]
    expect(plannedSteps(steps, planned()).map(({ minutes }) => minutes)).toEqual([3])
  })

  it('leaves out operations that the plan does not have', () => {
    expect(plannedSteps([step(1, 'cove-s9', 4)], planned())).toEqual([])
  })
})

describe('plannedAgainstActual', () => {
  it('adds up what was timed, by operation and in all', () => {
    const steps = [step(1, 'pack', 2.5), step(2, 'pack', 3), step(3, 'pack'), step(1, 'bead-s3')]
    const times = plannedAgainstActual(steps, planned())
    expect(times).toMatchObject({ done: 4, timed: 2, planned: 4, actual: 5.5 })
    expect(times.operations).toEqual([
      { key: 'bead-s3', name: 'Bead', done: 1, timed: 0, planned: 0, actual: 0, setAside: 0 },
      { key: 'pack', name: 'Pack', done: 3, timed: 2, planned: 4, actual: 5.5, setAside: 0 },
    ])
  })

  it('names gross errors, and still shows what was logged', () => {
    const steps = [2, 2.1, 1.9, 45].map((minutes, i) => step(i + 1, 'pack', minutes))
    expect(plannedAgainstActual(steps, planned()).operations[1]).toMatchObject({ setAside: 1, actual: 51 })
  })
})
