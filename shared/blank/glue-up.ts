import { inches, lengthText, nm, styleOf, type Units } from '../units/length.ts'
import { type FeatherEdge, featherEdges, type SurfacePlace } from './feather-edges.ts'

/** How the layers of a glued blank lie about its axis. Lengths mm, of the square that goes on the lathe. */
export interface GlueUp {
  layers: number
  /** Thickness of the middle layer and of each of the others, planed. */
  middle: number
  outer: number
  /** Distances of the glue lines from the axis, the nearest first; each but one through the axis lies on both sides. */
  lines: number[]
  /** Feather edges the lines leave, line by line. */
  feathers: (FeatherEdge & { line: number })[]
}

/** What a glue-up is laid out from. Lengths mm. */
export interface GlueUpInput {
  side: number
  layers: number
  /** The thickest a layer can be, planed. */
  layerMost: number
  places: readonly SurfacePlace[]
}

/** No layer is planed thinner than that. Common practice, no source. */
const LAYER_LEAST = inches(1 / 4)
/** The middle layer is tried in steps of that. Common practice, no source. */
const LAYER_STEP = inches(1 / 32)

/** Distances of the glue lines from the axis when the middle layer has a thickness of its own; mm. */
function linesOf(side: number, layers: number, middle: number): number[] {
  const outer = (side - middle) / Math.max(1, layers - 1)
  const each = Math.floor(layers / 2)
  return layers % 2 === 1
    ? Array.from({ length: each }, (_, i) => middle / 2 + i * outer)
    : Array.from({ length: each }, (_, i) => (i * side) / layers)
}

function glueUpWith({ side, layers, places }: GlueUpInput, middle: number): GlueUp {
  const lines = linesOf(side, layers, middle)
  const outer = (side - middle) / Math.max(1, layers - 1)
  const feathers = lines.flatMap((line) => featherEdges(places, line).map((edge) => ({ ...edge, line })))
  return { layers, middle, outer, lines, feathers }
}

const lengthOf = (feathers: FeatherEdge[]): number =>
  // A line that only touches counts too.
  feathers.reduce((sum, { from, to }) => sum + Math.max(to - from, 1e-3), 0)

const inNecks = ({ feathers }: GlueUp): number => lengthOf(feathers.filter(({ neck }) => neck))

/** Thicknesses the middle layer of an odd number can have, mm. */
function middles({ side, layers, layerMost }: GlueUpInput): number[] {
  const least = Math.max(LAYER_LEAST, side - (layers - 1) * layerMost)
  const most = Math.min(layerMost, side - (layers - 1) * LAYER_LEAST)
  const steps = Math.max(0, Math.floor((nm(most) - nm(least)) / nm(LAYER_STEP)))
  return Array.from({ length: steps + 1 }, (_, i) => least + i * LAYER_STEP)
}

/**
 * The layers of a glued blank: all alike, unless a glue line would then surface in a neck or cove as a feather edge
 * and a thicker or thinner middle layer keeps it out of there; then as near alike as will do. Such an edge lifts under
 * the tool and leaves a weak, open joint where the part is thinnest (common practice, no source). An even number has a
 * line through the axis and is left as it is.
 */
export function glueUpOf(input: GlueUpInput): GlueUp {
  const { side, layers } = input
  const alike = glueUpWith(input, side / layers)
  if (layers % 2 === 0 || inNecks(alike) === 0) return alike
  const off = ({ middle }: GlueUp) => Math.abs(nm(middle) - nm(alike.middle))
  return middles(input)
    .map((middle) => glueUpWith(input, middle))
    .reduce(
      (best, other) =>
        (nm(inNecks(other)) - nm(inNecks(best)) || off(other) - off(best)) < 0 ? other : best,
      alike,
    )
}

/** Feather edges told of one by one, at most. */
const PLACES_TOLD_MAX = 3

/** What is to be minded about the glue lines of a blank: feather edges in necks, then elsewhere. */
export function glueLineCautions({ feathers, layers, middle, outer }: GlueUp, units: Units): string[] {
  const text = (mm: number) => lengthText(mm, styleOf(units))
  const place = ({ from, to, angle }: FeatherEdge) =>
    `${nm(to - from) > nm(1) ? `from ${text(from)} to ${text(to)}` : `at ${text(from)}`} (${Math.round(angle)}°)`
  const listed = (edges: FeatherEdge[]) =>
    edges.slice(0, PLACES_TOLD_MAX).map(place).join(', ') +
    (edges.length > PLACES_TOLD_MAX ? ` and ${edges.length - PLACES_TOLD_MAX} places more` : '')
  const [necks, others] = [feathers.filter(({ neck }) => neck), feathers.filter(({ neck }) => !neck)]
  return [
    nm(middle) === nm(outer) || layers % 2 === 0
      ? undefined
      : `The middle layer is ${text(middle)} and the others ${text(outer)}, so that the glue lines keep clear of the necks as far as they can.`,
    necks.length === 0
      ? undefined
      : `Glue lines come out as feather edges in a neck or cove ${listed(necks)}: an edge that thin lifts under the tool, and the joint is weakest there. Look whether other stock, with other layers, keeps them out.`,
    others.length === 0
      ? undefined
      : `Glue lines run out as feather edges ${listed(others)}: light downhill cuts with a sharp tool there, and no catch to lift them.`,
  ].filter((sentence) => sentence !== undefined)
}
