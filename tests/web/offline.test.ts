import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'

/** A service worker that goes through the states of its life. */
class WorkerBench extends EventTarget {
  state = 'installing'
  goes(state: string) {
    this.state = state
    this.dispatchEvent(new Event('statechange'))
  }
}
interface Registered {
  active?: WorkerBench
  installing?: WorkerBench
  waiting?: WorkerBench
}

const opened = async (registered: Registered | Error, controller: WorkerBench | null = null) => {
  const register = async () => {
    if (registered instanceof Error) throw registered
    return { active: null, installing: null, waiting: null, ...registered }
  }
  vi.stubGlobal('navigator', {
    serviceWorker: Object.assign(new EventTarget(), { controller, register, ready: new Promise(() => {}) }),
  })
  const offline = await import('../../web/offline.ts')
  const told = vi.fn()
  offline.watchOffline(told)
  const before = offline.offlineState()
  await offline.keepFiles()
  return { ...offline, before, told }
}

beforeEach(() => {
  vi.resetModules()
  vi.stubEnv('DEV', false)
  vi.stubGlobal('location', { href: 'http://localhost:4870/', origin: 'http://localhost:4870' })
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.unstubAllEnvs()
})

describe('whether the pages open without a signal', () => {
  it('is told once every file is kept', async () => {
    const installing = new WorkerBench()
    const { offlineState, told, before } = await opened({ installing })
    expect([before, offlineState()]).toEqual(['installing', 'installing'])
    installing.goes('installed')
    expect(offlineState()).toBe('installing')
    installing.goes('activated')
    expect(offlineState()).toBe('ready')
    expect(told).toHaveBeenCalled()
  })

  it('is told when a file could not be fetched or kept', async () => {
    const installing = new WorkerBench()
    const { offlineState, told } = await opened({ installing })
    installing.goes('redundant')
    expect(offlineState()).toBe('failed')
    expect(told).toHaveBeenCalledOnce()
  })

  it('is told when it had come to nothing before anyone could watch', async () => {
    expect((await opened({})).offlineState()).toBe('failed')
    const installing = new WorkerBench()
    installing.state = 'redundant'
    vi.resetModules()
    expect((await opened({ installing })).offlineState()).toBe('failed')
  })

  it('stays so by the older files where newer ones cannot be kept', async () => {
    const [active, installing] = [new WorkerBench(), new WorkerBench()]
    const { offlineState, before } = await opened({ active, installing }, active)
    installing.goes('redundant')
    expect([before, offlineState()]).toEqual(['ready', 'ready'])
  })

  it('is not to be had where the browser keeps nothing', async () => {
    expect((await opened(new Error('not allowed'))).offlineState()).toBe('unsupported')
    vi.resetModules()
    vi.stubGlobal('navigator', {})
    const { offlineState } = await import('../../web/offline.ts')
    expect(offlineState()).toBe('unsupported')
  })
})
