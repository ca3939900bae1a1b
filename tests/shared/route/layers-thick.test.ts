import { expect, it } from 'vitest'
import { layersThick } from '../../../shared/route/layers-thick.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { leg, routeInput } from './route-inputs.ts'

const glueUp = (middle: number) => ({
  layers: 3,
  middle: inches(middle),
  outer: inches((2.25 - middle) / 2),
  lines: [inches(middle / 2)],
  feathers: [],
})

function faceLayersOf(middle?: number) {
  const input = routeInput(leg())
  const blank = { ...input.blank, layers: 3, ...(middle !== undefined && { glueUp: glueUp(middle) }) }
  return routeFor({ ...input, blank }).operations.find(({ key }) => key === 'face-layers')!.name
}

it('says one thickness where the layers are alike', () => {
  expect(faceLayersOf()).toMatch(/none under 3\/4 in thick/)
  expect(faceLayersOf(0.75)).toMatch(/none under 3\/4 in thick/)
})

it('says the middle layer apart where it keeps a glue line out of a neck', () => {
  expect(faceLayersOf(1)).toMatch(/the middle one 1 in thick, the two others none under 5\/8 in/)
})

it('says how many others there are where there are more', () => {
  const blank = { ...routeInput(leg()).blank, glueUp: { ...glueUp(1), layers: 5, outer: inches(0.3125) } }
  expect(layersThick({ blank, layers: 5, text: (mm) => `${mm / 25.4} in` })).toMatch(
    /the others none under 0.3125 in/,
  )
})
