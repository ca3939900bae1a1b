import { parseArgs } from 'node:util'
import { type Breach, badInput } from '../../shared/problem.ts'
import { papers } from '../prints/paper.ts'

/** What a verb is called with. */
export interface Call {
  verb: string
  /** What stands after the verb, in order. */
  operands: string[]
  json: boolean
  shop?: string
  record?: string
  units?: 'in' | 'mm'
  out?: string
  paper?: (typeof papers)[number]
  /** Of a roll, as written. */
  width?: string
  length?: string
  /** The folder the person stands in. */
  here: string
}

const flags = {
  json: { type: 'boolean', says: '--json' },
  shop: { type: 'string', says: '--shop FILE' },
  record: { type: 'string', says: '--record FILE' },
  units: { type: 'string', says: '--units in|mm' },
  out: { type: 'string', says: '--out FILE' },
  paper: { type: 'string', says: '--paper letter|a4|roll' },
  width: { type: 'string', says: '--width LENGTH' },
  length: { type: 'string', says: '--length LENGTH' },
} as const
type Flag = keyof typeof flags

interface Verb {
  operands: string[]
  flags: Flag[]
  says: string
}

/** Every verb, what must stand after it, and the flags it knows. */
export const verbs: Record<string, Verb> = {
  serve: { operands: [], flags: [], says: 'serve the pages and the interface (PORT, HOST, DATA_DIR)' },
  plan: { operands: ['FILE|-'], flags: ['json', 'shop', 'units', 'record'], says: 'plan a job file' },
  cut: { operands: ['FILE|-'], flags: ['json', 'shop', 'units'], says: 'plan the cutting of boards' },
  match: { operands: ['FILE|-'], flags: ['json', 'shop', 'units'], says: 'say how alike a set is' },
  print: {
    operands: ['WHAT', 'FILE|-'],
    flags: ['shop', 'record', 'units', 'out', 'paper', 'width', 'length'],
    says: 'print a job file to a PDF; --width and --length are those of a roll',
  },
  record: {
    operands: ['JOB|shop'],
    flags: ['json'],
    says: 'set plan against actual of a batch, or say what all times tell of the shop',
  },
  backup: { operands: ['FILE'], flags: [], says: 'copy the database, also while the server runs' },
  restore: { operands: ['FILE'], flags: [], says: 'put a copy back; what was there is kept beside it' },
  export: { operands: ['FILE|-'], flags: [], says: 'write jobs, profiles, shop and boards as JSON' },
  import: { operands: ['FILE|-'], flags: [], says: 'take in jobs, profiles, shop and boards from JSON' },
}

const usageOf = (name: string, { operands, flags: known }: Verb): string =>
  ['setwright', name, ...operands, ...known.map((flag) => `[${flags[flag].says}]`)].join(' ')

/** How the command line is used. */
export function usage(): string {
  const lines = Object.entries(verbs).map(([name, verb]) => `  ${usageOf(name, verb)}\n      ${verb.says}`)
  return `Setwright plans batches of matching turned parts.\n\n${lines.join('\n')}\n\nFILE is relative to where you stand; - reads standard input.\n`
}

const refused = (path: string, message: string): never => {
  throw badInput([{ path, message } satisfies Breach])
}

function oneOf<T extends string>(flag: string, value: unknown, allowed: readonly T[]): T | undefined {
  if (value === undefined || allowed.includes(value as T)) return value as T | undefined
  return refused(`--${flag}`, `must be ${allowed.join(' or ')}; read ${JSON.stringify(value)}`)
}

function checkFlags(
  name: string,
  known: Verb,
  tokens: { kind: string; name?: string; value?: unknown; rawName?: string }[],
): void {
  for (const { kind, name: flag, value, rawName } of tokens) {
    if (kind !== 'option') continue
    const allowed = known.flags.map((each) => flags[each].says)
    if (!known.flags.includes(flag as Flag))
      refused(rawName ?? `--${flag}`, `is no flag of ${name}; allowed: ${allowed.join(', ') || 'none'}`)
    if (flags[flag as Flag].type === 'string' && typeof value !== 'string')
      refused(rawName!, `needs a value: ${flags[flag as Flag].says}`)
    if (flags[flag as Flag].type === 'boolean' && value !== undefined) refused(rawName!, 'takes no value')
  }
}

/**
 * Reads the words after `setwright`.
 * @throws Problem `bad-input` that names the word and says what is allowed
 */
export function readCommand([name = '', ...rest]: string[], here: string): Call {
  const known = Object.hasOwn(verbs, name) ? verbs[name]! : undefined
  if (!known)
    return refused(
      'verb',
      `must be one of ${Object.keys(verbs).join(', ')}; read ${name === '' ? 'nothing' : JSON.stringify(name)}`,
    )
  const options = Object.fromEntries(Object.entries(flags).map(([flag, { type }]) => [flag, { type }]))
  const { values, positionals, tokens } = parseArgs({
    args: rest,
    options,
    allowPositionals: true,
    strict: false,
    tokens: true,
  })
  checkFlags(name, known, tokens)
  if (positionals.length !== known.operands.length)
    refused(
      known.operands.join(' ') || name,
      `${usageOf(name, known)}; read ${positionals.length === 0 ? 'nothing' : positionals.map((word) => JSON.stringify(word)).join(' ')}`,
    )
  return {
    verb: name,
    operands: positionals,
    json: values.json === true,
    shop: values.shop as string | undefined,
    record: values.record as string | undefined,
    units: oneOf('units', values.units, ['in', 'mm']),
    out: values.out as string | undefined,
    paper: oneOf('paper', values.paper, papers),
    width: values.width as string | undefined,
    length: values.length as string | undefined,
    here,
  }
}
