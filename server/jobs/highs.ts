import highs from 'highs'
import type { MipSolver } from '../../shared/cutting/mip.ts'
import { mipBy } from '../../shared/cutting/mip-by-highs.ts'

// The package is typed as CommonJS, whose import would be a namespace; what is loaded is the function.
const load = highs as unknown as (typeof highs)['default']

let solver: Promise<MipSolver> | undefined

/** The whole-number solver, loaded at the first call (a fifth of a second) and kept by the thread that did. */
export function highsSolver(): Promise<MipSolver> {
  solver ??= load().then(mipBy)
  return solver
}
