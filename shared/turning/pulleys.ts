/** A drive by stepped pulleys: each pair of motor and spindle pulley the belt runs on is a speed. Diameters mm. */
export interface PulleyDrive {
  motorRpm: number
  /** Effective diameters on the motor, and of the pulley facing each of them on the spindle. */
  motorPulleys: number[]
  spindlePulleys: number[]
}

/**
 * Speed of the driven pulley, rpm: the belt runs over both rims at one speed, its slip left out, which only makes it
 * slower. Milton & Wohlers (1919) ch. II. Diameters in any unit, both in the same.
 *
 * @example drivenRpm(1500, 4, 20) // 300
 */
export const drivenRpm = (drivingRpm: number, driving: number, driven: number): number =>
  (drivingRpm * driving) / driven

/**
 * The steps of a lathe from its pulleys, whole rpm, slowest first; a step that two pairs give counts once.
 *
 * @example pulleySteps({ motorRpm: 1725, motorPulleys: [50, 75, 100], spindlePulleys: [150, 125, 100] }) // [575, 1035, 1725]
 */
export function pulleySteps({ motorRpm, motorPulleys, spindlePulleys }: PulleyDrive): number[] {
  const steps = motorPulleys.map((motor, i) => Math.round(drivenRpm(motorRpm, motor, spindlePulleys[i]!)))
  return [...new Set(steps)].sort((a, b) => a - b)
}
