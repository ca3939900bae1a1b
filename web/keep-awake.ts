import type { ReactiveController, ReactiveControllerHost } from 'lit'

/**
 * Keeps the screen from going dark while it is asked to, where the browser can. A browser lets go of it whenever the
 * page is hidden, so it is asked for again each time the page shows.
 */
export class KeepAwake implements ReactiveController {
  /** Whether the screen is kept awake; undefined while that is not asked for or not known yet. */
  held?: boolean | undefined
  private readonly host: ReactiveControllerHost
  private asked = false
  private lock?: WakeLockSentinel | undefined

  constructor(host: ReactiveControllerHost) {
    this.host = host
    host.addController(this)
  }

  hostConnected(): void {
    document.addEventListener('visibilitychange', this.askAgain)
  }

  hostDisconnected(): void {
    document.removeEventListener('visibilitychange', this.askAgain)
    this.stop()
  }

  start(): void {
    this.asked = true
    void this.take()
  }

  stop(): void {
    this.asked = false
    this.held = undefined
    void this.lock?.release()
    this.lock = undefined
  }

  private readonly askAgain = () => {
    if (this.asked && document.visibilityState === 'visible') void this.take()
  }

  private async take(): Promise<void> {
    const lock = await newLock()
    if (!this.asked) return void lock?.release()
    this.lock = lock
    this.held = lock !== undefined
    this.host.requestUpdate()
  }
}

/** Refused on a low battery, and missing in older browsers and without HTTPS. */
async function newLock(): Promise<WakeLockSentinel | undefined> {
  try {
    return await (navigator as Partial<Navigator>).wakeLock?.request('screen')
  } catch {
    return undefined
  }
}
