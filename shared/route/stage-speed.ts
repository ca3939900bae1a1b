import { type Mount, mountFactor } from '../turning/mount.ts'
import { type Speed, type SpeedWork, speedFor, type Trueness } from '../turning/speed.ts'
import type { RouteInput } from './input.ts'
import type { PartShape } from './part-shape.ts'
import { roughDiameterOf } from './rough-size.ts'

/** How far the blank has come: still square, roughed, dried out of round since, or shaped. */
export type BlankState = 'square' | 'roughed' | 'dried' | 'shaped'

/** What spins. Lengths mm. */
export interface Spinning {
  /** Largest diameter once it is roughed: the diagonal where a part stays square. */
  largest: number
  maxSide: number
  gluedUp: boolean
  openMortise: boolean
}

/** What spins of a job. */
export function spinningOf(
  input: RouteInput,
  { maxSide, zones }: Pick<PartShape, 'maxSide' | 'zones'>,
): Spinning {
  const { blank, profile, joints } = input
  const rough = zones.map((zone) => roughDiameterOf(zone, input))
  return {
    largest: maxSide > 0 ? blank.diagonal : Math.max(0, ...rough),
    maxSide,
    gluedUp: blank.layers > 1 || profile.split,
    openMortise: joints.some((joint) => joint.stage === 'square' && joint.kind !== 'tenon'),
  }
}

function truenessOf(state: BlankState, { maxSide, gluedUp }: Spinning): Trueness {
  if (gluedUp) return 'glued-up'
  if (state === 'square' || maxSide > 0) return 'square'
  return state === 'dried' ? 'untrue' : 'round'
}

/** The lowest speed at which it whips in that state on its mount, rpm: while it is shaped it becomes the part. */
function criticalRpm(
  { whip, blankCriticalRpm }: RouteInput,
  state: BlankState,
  mount: Mount,
): number | undefined {
  const [blank, part] = [blankCriticalRpm, whip.criticalRpm]
  const met = state === 'square' ? [blank] : state === 'shaped' ? [part] : [blank, part]
  const known = met.filter((rpm) => Number.isFinite(rpm))
  return known.length === 0 ? undefined : Math.min(...known) * mountFactor(mount)
}

/** What swings farthest: the diagonal while there are corners, of what is glued up or dried out of round always. */
function swungDiameter(input: RouteInput, state: BlankState, { largest, gluedUp }: Spinning): number {
  return state === 'square' || state === 'dried' || gluedUp ? input.blank.diagonal : largest
}

/** Speed and ceiling for a kind of work at a state of the blank; rpm. */
export function stageSpeed(
  input: RouteInput,
  spinning: Spinning,
  { work, state, mount }: { work: SpeedWork; state: BlankState; mount: Mount },
): Speed {
  return speedFor({
    lathe: input.lathe,
    accessoryRpm: input.accessoryRpm,
    diameter: swungDiameter(input, state, spinning),
    trueness: truenessOf(state, spinning),
    work,
    corners: state === 'square',
    criticalRpm: criticalRpm(input, state, mount),
    openMortise: spinning.openMortise,
    units: input.units,
  })
}

/** Speed for marking and gauging a roughed blank, rpm: no higher than it was roughed at. */
export function gaugingSpeed(input: RouteInput, spinning: Spinning, mount: Mount): Speed {
  const roughing = stageSpeed(input, spinning, { work: 'roughing', state: 'square', mount })
  const gauging = stageSpeed(input, spinning, { work: 'roughing', state: 'roughed', mount })
  if (roughing.rpm === undefined || gauging.rpm === undefined) return gauging
  return { ...gauging, rpm: Math.min(roughing.rpm, gauging.rpm) }
}
