import { css, type SVGTemplateResult, svg } from 'lit'
import type { PartGeometry } from './part-geometry.ts'
import { flatLight, roundBands, slopeStops } from './part-shading.ts'
import { halfPath, silhouettePath, stepsOf } from './part-silhouette.ts'
import { litTone, woodTone } from './wood-tones.ts'

/** How the lines of a drawn part look. */
export const woodLook = css`
  .edge { fill: none; stroke: #1c120a; stroke-width: 1; stroke-linejoin: round; opacity: 0.75; }
  .arris { stroke: #1c120a; stroke-width: 0.8; opacity: 0.4; }
  .joint { fill: #1c120a; opacity: 0.72; }
  .joint-hidden { fill: none; stroke: #1c120a; stroke-width: 1; stroke-dasharray: 4 2.5; opacity: 0.8; }
`

const BANDS = 18
const ROUGH_BANDS = 7

/** How a part is lit. */
export interface Light {
  species: string
  /** 1 when the light comes from the foot, -1 when it comes from the top. */
  from: -1 | 1
  /** Fewer bands and no shadows along the part, for a drawing that changes at every frame. */
  rough?: boolean
}

const stop = (offset: number, light: number): SVGTemplateResult =>
  svg`<stop offset=${offset.toFixed(4)} stop-color=${light < 0 ? '#160c04' : '#fff4dd'}
    stop-opacity=${(light < 0 ? -0.62 * light : 0.3 * light).toFixed(3)}></stop>`

/** Shapes that the wood is painted with, for the `defs` of the drawing. */
export function woodDefs({ outline }: PartGeometry, { from, rough = false }: Light): SVGTemplateResult {
  // Shapes used many times are copied at each change: a drawing that changes at every frame has none.
  if (rough) return svg`<clipPath id="silhouette"></clipPath>`
  return svg`
    <path id="upper" d=${halfPath(outline, -1)}></path>
    <path id="lower" d=${halfPath(outline, 1)}></path>
    <clipPath id="silhouette"><path d=${silhouettePath(outline)}></path></clipPath>
    <linearGradient id="along" gradientUnits="userSpaceOnUse" x1="0" y1="0" x2=${outline.at(-1)?.x ?? 0} y2="0">
      ${slopeStops(outline, from).map(({ offset, light }) => stop(offset, light))}
    </linearGradient>`
}

const smoothBands = (tone: string) =>
  ([-1, 1] as const).map((side) =>
    roundBands(tone, side, BANDS).map(
      ({ squeeze, fill }) =>
        svg`<use href=${side < 0 ? '#upper' : '#lower'} transform="scale(1 ${squeeze.toFixed(4)})" fill=${fill}></use>`,
    ),
  )

const roughBands = (outline: PartGeometry['outline'], tone: string) =>
  ([-1, 1] as const).map((side) => {
    const half = halfPath(outline, side)
    return roundBands(tone, side, ROUGH_BANDS).map(
      ({ squeeze, fill }) =>
        svg`<path d=${half} transform="scale(1 ${squeeze.toFixed(4)})" fill=${fill}></path>`,
    )
  })

/** The part as turned wood about the axis y = 0, foot at x = 0. */
export function wood(geometry: PartGeometry, { species, rough = false }: Light): SVGTemplateResult {
  const { outline, flats, grain, joints } = geometry
  const tone = woodTone(species)
  const silhouette = silhouettePath(outline)
  return svg`
    ${rough ? roughBands(outline, tone) : smoothBands(tone)}
    <path d=${silhouette} fill=${rough ? 'none' : 'url(#along)'}></path>
    ${flats.map((flat) => svg`<path d=${flat.path} fill=${litTone(tone, flatLight())} stroke="#1c120a" stroke-opacity="0.35" stroke-width="0.8"></path>`)}
    ${grain.map(
      ({ path, weight }) => svg`<path d=${path} fill="none" stroke=${litTone(tone, 0.42)}
        stroke-opacity=${(0.12 + 0.26 * weight).toFixed(2)} stroke-width=${(0.5 + 0.7 * weight).toFixed(2)}></path>`,
    )}
    ${stepsOf(outline).map(({ x, r }) => svg`<line class="arris" x1=${x} x2=${x} y1=${-r} y2=${r}></line>`)}
    ${joints.map(({ path, hidden }) => svg`<path class=${hidden ? 'joint-hidden' : 'joint'} d=${path}></path>`)}
    <path class="edge" d=${silhouette}></path>`
}
