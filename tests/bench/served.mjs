// The built server for what is measured in Chromium, and how figures are told.
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The built server with an empty data folder, and its address. */
export function served(folder) {
  const child = spawn(process.execPath, [join(root, 'dist/server/main.js')], {
    cwd: folder,
    env: { ...process.env, DATA_DIR: folder, PORT: '28800', SETWRIGHT_DEMO: '0', RATE_MAX: '100000' },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  return new Promise((resolve, reject) => {
    child.stdout.on('data', (said) => {
      const address = /http:\/\/[\w.]+:\d+/.exec(said.toString())
      if (address) resolve({ child, address: address[0] })
    })
    child.once('exit', (code) => reject(new Error(`The server ended with ${code}`)))
  })
}

/** Median and 95th percentile of times in ms. */
export const figures = (all) => {
  const ms = [...all].sort((a, b) => a - b)
  const at = (share) => ms[Math.min(ms.length - 1, Math.floor(ms.length * share))].toFixed(2).padStart(9)
  return `median ${at(0.5)} ms   p95 ${at(0.95)} ms`
}
