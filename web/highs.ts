import highs from 'highs'
import wasm from 'highs/runtime?url'
import type { MipSolver } from '../shared/cutting/mip.ts'
import { mipBy } from '../shared/cutting/mip-by-highs.ts'

// The package is typed as CommonJS, whose import would be a namespace; what is loaded is the function.
const load = highs as unknown as (typeof highs)['default']

/** The whole-number solver, its WebAssembly fetched from this program’s own files. */
export const loadHighs = async (): Promise<MipSolver> => mipBy(await load({ locateFile: () => wasm }))
