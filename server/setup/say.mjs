import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

/** The folder that holds package.json. */
export const root = fileURLToPath(new URL('../../', import.meta.url))

/** A set-up step that cannot go on, with one sentence a person can act on. */
export class SetupProblem extends Error {}

/**
 * Where set-up speaks: on stdout for `npm start` and `npm test`, on stderr for the verbs of the command
 * line, whose stdout belongs to the answer.
 */
export function voice(quiet) {
  const stream = quiet ? process.stderr : process.stdout
  return { say: (text) => stream.write(`${text}\n`), fd: quiet ? 2 : 1 }
}

/** Runs a program, telling every ten seconds that it is still at it. Rejects when it ends badly. */
export function run(
  command,
  args,
  { voice: { say, fd }, what, env = process.env, cwd = root, shell = false },
) {
  return new Promise((resolve, reject) => {
    const begun = Date.now()
    const child = spawn(command, args, { cwd, env, shell, stdio: ['ignore', fd, 2] })
    const beat = setInterval(
      () => say(`  … ${what}: still at it after ${Math.round((Date.now() - begun) / 1000)} s`),
      10_000,
    )
    const end = (problem) => {
      clearInterval(beat)
      if (problem) reject(new SetupProblem(problem))
      else resolve(undefined)
    }
    child.on('error', (error) => end(`${what} could not be started: ${error.message}`))
    child.on('close', (code, signal) =>
      end(code === 0 ? undefined : `${what} failed (${signal ?? `exit ${code}`}).`),
    )
  })
}
