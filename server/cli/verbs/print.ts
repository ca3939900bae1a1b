import { badInput } from '../../../shared/problem.ts'
import { type PrintName, paperOf, printNames, printPdf } from '../../prints/index.ts'
import type { Call } from '../command.ts'
import { type Speech, writeOut } from '../output.ts'
import { planned, styleFor } from './trials.ts'

export async function print(call: Call, { out }: Speech): Promise<void> {
  const [what, file] = call.operands as [PrintName, string]
  if (!printNames.includes(what)) {
    throw badInput([
      { path: 'WHAT', message: `must be one of ${printNames.join(', ')}; read ${JSON.stringify(what)}` },
    ])
  }
  const { plan, shop, wood } = await planned(call, file)
  const paper = paperOf(call, shop.units, '--')
  const pdf = await printPdf(what, plan, { paper, style: styleFor(call, plan.job.units), shop, wood })
  const stem = file === '-' ? 'job' : file.replace(/^.*[\\/]/, '').replace(/\.json$/i, '')
  const name = call.out ?? `${stem}-${what}.pdf`
  await writeOut(name, call.here, pdf)
  out(`${name}\n`)
}
