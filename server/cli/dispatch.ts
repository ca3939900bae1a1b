import { Problem } from '../../shared/problem.ts'
import { version } from '../package-root.ts'
import { type Call, readCommand, usage } from './command.ts'
import { aloud, type Speech, safely } from './output.ts'
import { cut, match, plan } from './verbs/trials.ts'

type Verb = (call: Call, speech: Speech) => Promise<void>

/** What each verb does; what only some of them need is loaded by those alone. */
const doings: Record<string, Verb> = {
  plan,
  cut,
  match,
  serve: async () => (await import('../serve.ts')).startServer(process.env),
  print: async (...call) => (await import('./verbs/print.ts')).print(...call),
  record: async (...call) => (await import('./verbs/record.ts')).record(...call),
  backup: async (...call) => (await import('./verbs/data.ts')).backup(...call),
  restore: async (...call) => (await import('./verbs/data.ts')).restore(...call),
  export: async (...call) => (await import('./verbs/data.ts')).exportData(...call),
  import: async (...call) => (await import('./verbs/data.ts')).importData(...call),
}

/** What is said of a failure, a line for each field, and the exit code: 2 for bad input, 1 for our own. */
function failureOf(error: unknown): { lines: string[]; code: 1 | 2 } {
  if (!(error instanceof Problem))
    return { lines: [`Setwright failed: ${(error as Error).message ?? String(error)}`], code: 1 }
  const lines = error.errors.map(({ path, message }) => (path === '' ? message : `${path}: ${message}`))
  return { lines: lines.length > 0 ? lines : [error.message], code: 2 }
}

/** Runs one command; answers the exit code. */
export async function run(args: string[], here: string, listener: Speech): Promise<0 | 1 | 2> {
  const speech = safely(listener)
  try {
    if (['--help', '-h', 'help'].includes(args[0] ?? '')) speech.out(usage())
    else if (args[0] === '--version') speech.out(`${version}\n`)
    else {
      const call = readCommand(args, here)
      await doings[call.verb]!(call, speech)
    }
    return 0
  } catch (error) {
    const { lines, code } = failureOf(error)
    speech.err(`${lines.map((line) => line.replace(/\s*\n\s*/g, ' ')).join('\n')}\n`)
    return code
  }
}

/** Runs the command of this process. A reader that goes away early (`| head`) is no failure. */
export async function runCli(args: string[], here: string): Promise<void> {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
  const code = await run(args, here, aloud)
  if (code !== 0) process.exitCode = code
}
