import { afterEach, describe, expect, it, vi } from 'vitest'
import { KeepAwake } from '../../web/keep-awake.ts'

interface Screen {
  locks: { released: boolean }[]
  show: () => void
}

function screen(request?: () => Promise<unknown>): Screen {
  const locks: Screen['locks'] = []
  const shown: (() => void)[] = []
  const give = async () => {
    const lock = { released: false }
    locks.push(lock)
    const release = async () => {
      lock.released = true
    }
    return { release }
  }
  vi.stubGlobal('document', {
    visibilityState: 'visible',
    addEventListener: (_: string, hear: () => void) => shown.push(hear),
    removeEventListener: (_: string, hear: () => void) => shown.splice(shown.indexOf(hear), 1),
  })
  vi.stubGlobal('navigator', { wakeLock: { request: request ?? give } })
  const show = () => {
    for (const hear of shown) hear()
  }
  return { locks, show }
}

const awake = () => {
  const keep = new KeepAwake({ addController: () => undefined, requestUpdate: () => undefined } as never)
  keep.hostConnected()
  return keep
}

const settled = () => new Promise((resolve) => setTimeout(resolve))

afterEach(() => void vi.unstubAllGlobals())

describe('KeepAwake', () => {
  it('holds the screen from start to stop', async () => {
    const { locks } = screen()
    const keep = awake()
    keep.start()
    await settled()
    expect(keep.held).toBe(true)
    keep.stop()
    await settled()
    expect(locks).toEqual([{ released: true }])
    expect(keep.held).toBeUndefined()
  })

  it('asks again when the page shows again, and not once it is stopped', async () => {
    const { locks, show } = screen()
    const keep = awake()
    keep.start()
    await settled()
    show()
    await settled()
    expect(locks).toHaveLength(2)
    keep.stop()
    show()
    await settled()
    expect(locks).toHaveLength(2)
  })

  it('gives back what comes after it was stopped', async () => {
    const { locks } = screen()
    const keep = awake()
    keep.start()
    keep.stop()
    await settled()
    expect(locks).toEqual([{ released: true }])
  })

  it('says so where the screen cannot be held: refused, or not known to the browser', async () => {
    screen(() => Promise.reject(new Error('low battery')))
    const refused = awake()
    refused.start()
    await settled()
    expect(refused.held).toBe(false)
    vi.stubGlobal('navigator', {})
    const missing = awake()
    missing.start()
    await settled()
    expect(missing.held).toBe(false)
  })
})
