import { type Mount, mountFactor } from '../turning/mount.ts'
import { type Speed, type SpeedWork, speedFor, type Trueness } from '../turning/speed.ts'
import type { RouteInput } from './input.ts'

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
  const [blank, part] = [blankCriticalRpm, whip?.criticalRpm]
  const met = state === 'square' ? [blank ?? part] : state === 'shaped' ? [part] : [blank, part]
  const known = met.filter((rpm) => rpm !== undefined && Number.isFinite(rpm)) as number[]
  return known.length === 0 ? undefined : Math.min(...known) * mountFactor(mount)
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
    diameter: state === 'square' ? input.blank.diagonal : spinning.largest,
    trueness: truenessOf(state, spinning),
    work,
    corners: state === 'square',
    criticalRpm: criticalRpm(input, state, mount),
    openMortise: spinning.openMortise,
    units: input.units,
  })
}
