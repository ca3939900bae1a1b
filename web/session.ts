import type { ReactiveController, ReactiveControllerHost } from 'lit'
import { type LengthStyle, lengthFigure, lengthText, styleOf, type Units } from '../shared/units/length.ts'

/** What one person has chosen on this device. */
export interface Session {
  /** How lengths are shown; the job's own way when absent. */
  style?: LengthStyle
  theme?: 'light' | 'dark'
  /** What prints are made for; the shop's own when absent. */
  paper?: 'letter' | 'a4' | 'roll' | undefined
  /** Width of the roll, as written. */
  rollWidth?: string | undefined
  /** Written beside readings and steps. */
  by: string
}

/** A roll of tracing paper as drawing offices have it; common practice, no source. */
export const DEFAULT_ROLL = '24 in'

const KEY = 'setwright.session'
const listeners = new Set<() => void>()
let current: Session = readSession()

function readSession(): Session {
  try {
    const stored = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Session>
    return { ...stored, by: typeof stored.by === 'string' ? stored.by : '' }
  } catch {
    return { by: '' }
  }
}

/** Puts the chosen light on the document; without a choice the device decides. */
export function wearTheme(): void {
  if (current.theme) document.documentElement.dataset.theme = current.theme
  else delete document.documentElement.dataset.theme
}

/** The choices of the person at this device. */
export const session = (): Session => current

/** Changes some of them, keeps them on this device and redraws what shows them. */
export function changeSession(change: Partial<Session>): void {
  current = { ...current, ...change }
  try {
    localStorage.setItem(KEY, JSON.stringify(current))
  } catch {
    // Without storage the choice lasts as long as the page.
  }
  wearTheme()
  for (const listener of listeners) listener()
}

/** The style lengths of a job written in `units` are shown in. */
export const lengthStyle = (units: Units): LengthStyle => current.style ?? styleOf(units)

/** A length with its unit in the person's style, e.g. `2-3/8 in`. */
export const length = (mm: number, units: Units): string => lengthText(mm, lengthStyle(units))

/** The figure alone, for columns whose heading carries `lengthUnit`. */
export const figure = (mm: number, units: Units): string => lengthFigure(mm, lengthStyle(units))

export const lengthUnit = (units: Units): Units => (lengthStyle(units) === 'mm' ? 'mm' : 'in')

/** Redraws its element when a choice changes: `new SessionController(this)`. */
export class SessionController implements ReactiveController {
  private readonly host: ReactiveControllerHost
  private readonly redraw = () => this.host.requestUpdate()

  constructor(host: ReactiveControllerHost) {
    this.host = host
    host.addController(this)
  }

  hostConnected() {
    listeners.add(this.redraw)
  }

  hostDisconnected() {
    listeners.delete(this.redraw)
  }
}
