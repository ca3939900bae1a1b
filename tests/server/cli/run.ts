import { run } from '../../../server/cli/dispatch.ts'

export interface Ran {
  code: number
  out: string
  err: string
}

/** Runs one command in this process, as someone standing in `here` would. */
export async function cli(args: string[], here: string): Promise<Ran> {
  const said = { out: '', err: '' }
  const code = await run(args, here, {
    out: (text) => {
      said.out += text
    },
    err: (text) => {
      said.err += text
    },
  })
  return { code, ...said }
}
