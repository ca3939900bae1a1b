import { nm } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { placeName } from '../place-name.ts'
import { removedBySizing } from '../removed.ts'
import { cutsToMake, NO_WOOD_OVER } from '../rough-size.ts'
import { grooveCaution } from '../steady.ts'
import { partingTool } from '../tool-choice.ts'

/** One sizing cut for each distinct position, with the caliper set over by what later stages take. */
export function size(context: RouteContext): OperationDraft[] {
  const { tool, cut, width, caution } = partingTool(context)
  const speed = context.gaugingSpeed()
  return cutsToMake(context).map((place) => {
    const rough = context.roughDiameter(context.zoneAt(place.at))
    const feature = context.featureOf(place.span)
    const bare = nm(place.caliper) > nm(rough)
    return draftOf('size', {
      key: `size-${place.station}`,
      name: `Size ${placeName(context, place.at, place.name)} to ${context.text(place.caliper)}`,
      where: [place.at, place.at],
      tool,
      cut,
      speed,
      caliper: place.caliper,
      caliperStation: place.station,
      ...context.restAlong(place.at, place.at),
      stretch: context.stretchOf(feature),
      work: {
        length: context.parts * width,
        surface: context.parts * Math.PI * place.caliper * width,
        removed: context.parts * removedBySizing(context, place.span, place.caliper),
        count: context.parts,
        diameter: rough,
      },
      why: place.tenon
        ? 'A tenon has to fit: sized first, brought to the gauge last.'
        : `Finished ${context.text(place.target)}; the rest comes off in the finishing cut and in sanding.`,
      cautions: [
        caution,
        cautions.springCalipers,
        bare ? NO_WOOD_OVER : undefined,
        grooveCaution(context, place.at),
      ],
    })
  })
}
