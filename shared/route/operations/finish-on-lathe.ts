import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { finishingOf } from '../finishing.ts'
import type { OperationDraft } from '../operation.ts'

/** Oil, wax or polish while it still turns; tenons stay bare. */
export function finishOnLathe(context: RouteContext): OperationDraft[] {
  const { finish, turned, parts } = context
  const coated = turned.filter((span) => !span.station.tenon)
  if (finish === 'none' || finish === 'film' || coated.length === 0) return []
  const tenons = coated.length < turned.length
  return [
    draftOf('finish-on-lathe', {
      name: `${{ oil: 'Oil', wax: 'Wax', polish: 'Polish' }[finish]} it on the lathe`,
      where: [coated[0]!.from, coated.at(-1)!.to],
      tool: 'pad',
      speed: context.speed('finishing', 'shaped'),
      work: {
        length: parts * context.length,
        surface: parts * coated.reduce((sum, span) => sum + context.sizeOf(span).surface, 0),
        count: finishingOf(finish).coats,
        diameter: Math.max(...context.zones.map((zone) => zone.maxDiameter)),
      },
      why: `At a low speed and with little on the pad, before it leaves the lathe${tenons ? '; tenons and mortises stay bare for the glue' : ''}.`,
      cautions: [finish === 'oil' ? cautions.oilyRags : undefined, cautions.finishOnLathe],
    }),
  ]
}
