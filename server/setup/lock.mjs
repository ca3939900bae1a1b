import { createHash } from 'node:crypto'
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { root } from './say.mjs'

/** Holds the process id of the set-up that is at work on this checkout. */
export const lockFile = join(
  tmpdir(),
  `setwright-setup-${createHash('sha256').update(root).digest('hex').slice(0, 16)}.lock`,
)

function isAlive(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}

function taken() {
  try {
    writeFileSync(lockFile, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    if (error.code !== 'EEXIST') throw error
    return false
  }
}

/** Drops the lock of a set-up that died before it could do so itself. */
function dropIfStale() {
  try {
    const owner = Number(readFileSync(lockFile, 'utf8'))
    if (owner > 0 && !isAlive(owner)) rmSync(lockFile, { force: true })
  } catch (error) {
    if (error.code !== 'ENOENT') throw error
  }
}

/** Runs `work` while no other set-up of this checkout runs: two at once would undo each other's files. */
export async function alone(say, work) {
  for (let tries = 0; !taken(); tries++) {
    if (tries === 0) say('Another set-up of this checkout is at work; waiting for it …')
    dropIfStale()
    await new Promise((resolve) => setTimeout(resolve, 250))
  }
  try {
    return await work()
  } finally {
    rmSync(lockFile, { force: true })
  }
}
