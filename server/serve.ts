import type { AddressInfo } from 'node:net'
import { Problem } from '../shared/problem.ts'
import { buildApp } from './app.ts'
import { type Config, readConfig } from './config.ts'
import { openContext } from './context.ts'
import { seedDemo } from './demo.ts'
import type { App } from './routes/route.ts'

/** How many ports after a taken one are tried. */
const PORTS_TRIED = 100

const say = (text: string) => process.stdout.write(`${text}\n`)

/** Listens on the port wished for, or on the next free one; answers the port. */
async function listen(app: App, { host, port }: Config): Promise<number> {
  for (let tried = port; ; tried++) {
    try {
      await app.listen({ host, port: tried })
      return (app.server.address() as AddressInfo).port
    } catch (error) {
      const isTaken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE'
      if (!isTaken || tried >= Math.min(port + PORTS_TRIED, 65_535)) throw error
      if (tried === port) say(`Port ${port} is taken; looking for the next free one.`)
    }
  }
}

/** Closes the server and the database once, when the system or the person asks for it. */
function closeOnSignal(close: () => Promise<void>): void {
  const end = () => {
    process.off('SIGTERM', end).off('SIGINT', end)
    close().catch((error: unknown) => {
      process.stderr.write(`${String(error)}\n`)
      process.exitCode = 1
    })
  }
  process.on('SIGTERM', end).on('SIGINT', end)
}

async function serve(config: Config): Promise<void> {
  const context = await openContext(config)
  if (config.demo && (await seedDemo(context)))
    say('The database was empty: a demo shop with its jobs and profiles is in it.')
  const app = await buildApp(context, { logger: { level: 'warn', stream: process.stderr } })
  const port = await listen(app, config)
  closeOnSignal(async () => {
    await app.close()
    await context.db.destroy()
  })
  const shown = config.host === '0.0.0.0' || config.host === '::' ? 'localhost' : config.host
  say(`Setwright is at http://${shown.includes(':') ? `[${shown}]` : shown}:${port}`)
}

/** Runs the server until it is asked to end. Settings that cannot be used are told in one line each. */
export async function startServer(env: Record<string, string | undefined>): Promise<void> {
  try {
    await serve(readConfig(env))
  } catch (error) {
    process.exitCode = error instanceof Problem ? 2 : 1
    const lines =
      error instanceof Problem
        ? error.errors.map(({ path, message }) => `${path}: ${message}`)
        : [String(error)]
    process.stderr.write(`${lines.join('\n')}\n`)
  }
}
