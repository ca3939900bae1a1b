import { join, resolve } from 'node:path'
import { z } from 'zod'
import { readInput } from '../shared/input.ts'

/** The settings of the server, from the environment. */
export interface Config {
  host: string
  port: number
  /** File of the database. */
  database: string
  /** Requests a minute from one address. */
  rateMax: number
  /** Whether an empty database is filled with the demo. */
  demo: boolean
}

const whole = (most: number) => z.coerce.number().int().min(0).max(most)

const environment = z.object({
  HOST: z.string().min(1).default('127.0.0.1'),
  PORT: whole(65_535).default(4870),
  DATA_DIR: z.string().min(1).default('data'),
  RATE_MAX: whole(1e9).default(12_000),
  SETWRIGHT_DEMO: z.enum(['0', '1']).default('1'),
})

/** Where the database lies in a data folder. */
const databaseFile = (folder: string): string => join(resolve(folder), 'setwright.db')

/**
 * Reads the settings; what is not set has its default.
 * @throws Problem `bad-input` that names the variable
 */
export function readConfig(env: Record<string, string | undefined>): Config {
  const set = Object.fromEntries(Object.entries(env).filter(([, value]) => value !== ''))
  const { HOST, PORT, DATA_DIR, RATE_MAX, SETWRIGHT_DEMO } = readInput(environment, set)
  return {
    host: HOST,
    port: PORT,
    database: databaseFile(DATA_DIR),
    rateMax: RATE_MAX,
    demo: SETWRIGHT_DEMO === '1',
  }
}
