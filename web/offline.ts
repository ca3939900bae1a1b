import { ownScript } from './own-script.ts'

/**
 * Whether the pages open without a signal: `ready` once all files are kept on this device, `installing` while they
 * are fetched, `failed` where they could not all be fetched or kept, `unsupported` where the browser keeps none (it
 * does so only over HTTPS, or on the device of the server itself).
 */
export type OfflineState = 'ready' | 'installing' | 'failed' | 'unsupported'

const listeners = new Set<() => void>()
const isAllowed = 'serviceWorker' in navigator && !import.meta.env.DEV
let state: OfflineState = !isAllowed
  ? 'unsupported'
  : navigator.serviceWorker.controller
    ? 'ready'
    : 'installing'
let isNewer = false

function tell(): void {
  for (const listener of listeners) listener()
}

/** Whether the pages open without a signal, as far as is known now. */
export const offlineState = (): OfflineState => state

/** Whether a newer version than the one shown has been fetched: it comes with the next load. */
export const hasNewerVersion = (): boolean => isNewer

/** Calls when either of these changes; returns the way to stop that. */
export function watchOffline(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

function settle(known: OfflineState): void {
  state = known
  tell()
}

/**
 * Waits until one that is being installed is at work; one that could not fetch or keep every file is `redundant`, and
 * nothing else ever tells so.
 */
function followed(worker: ServiceWorker): void {
  const follow = () => {
    if (worker.state === 'activated') settle('ready')
    // An older one may be at work still, and keeps what it has.
    else if (worker.state === 'redundant' && state === 'installing') settle('failed')
  }
  worker.addEventListener('statechange', follow)
  follow()
}

/** Has the files of the program kept on this device, and the kept ones renewed. */
export async function keepFiles(): Promise<void> {
  if (!isAllowed) return
  let isControlled = navigator.serviceWorker.controller !== null
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    isNewer = isControlled
    isControlled = true
    tell()
  })
  try {
    const kept = await navigator.serviceWorker.register(ownScript('/sw.js'))
    // One is at work only once it has fetched every file.
    if (kept.active) settle('ready')
    const coming = kept.installing ?? kept.waiting
    if (coming) followed(coming)
    else if (!kept.active) settle('failed')
  } catch {
    // A browser that is set to keep nothing, or a server that went away meanwhile.
    if (state === 'installing') settle('unsupported')
  }
}
