import { FILLET } from '../profile/fillet.ts'
import { diametersOf } from '../profile/radius.ts'
import type { CutKind } from '../turning/edge.ts'
import { inches, nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import type { Feature } from './features.ts'
import type { RouteTool } from './input.ts'

/** A tool for a cut: from the shop’s list, or the usual one with a caution that the shop lacks it. */
export interface ToolChoice {
  tool: string
  cut: CutKind
  /** Width of blade or flute, mm. */
  width: number
  caution?: string
}

type ToolKind = RouteTool['kind']

/** Usual widths: gouge 1-1/4 in, skew, parting 1/8 in by Milton & Wohlers (1919) ch. III to V; the rest common practice, no source. */
const usual: Record<ToolKind, { name: string; width: number }> = {
  'roughing-gouge': { name: '1-1/4 in roughing gouge', width: inches(1.25) },
  'spindle-gouge': { name: '1/2 in spindle gouge', width: inches(1 / 2) },
  skew: { name: '1 in skew', width: inches(1) },
  parting: { name: '1/8 in parting tool', width: inches(1 / 8) },
  scraper: { name: '1/2 in round-nose scraper', width: inches(1 / 2) },
}

/** Convex curves from this length on are skew work. Common practice, no source. */
const LONG_CURVE = inches(1)

const cutOf = (kind: ToolKind): CutKind =>
  kind === 'scraper' ? 'scraping' : kind === 'parting' ? 'parting' : 'slicing'

const chosen = (tool: RouteTool, caution?: string): ToolChoice => ({
  tool: tool.name,
  cut: cutOf(tool.kind),
  width: tool.width,
  ...(caution !== undefined && { caution }),
})

function lacking(kind: ToolKind): ToolChoice {
  const { name, width } = usual[kind]
  return {
    tool: name,
    cut: cutOf(kind),
    width,
    caution: `The shop’s list has no such tool: a ${name} is taken.`,
  }
}

const byWidth = (tools: RouteTool[], kind: ToolKind): RouteTool[] =>
  tools.filter((tool) => tool.kind === kind).sort((a, b) => a.width - b.width)

const widest = (tools: RouteTool[], kind: ToolKind): RouteTool | undefined => byWidth(tools, kind).at(-1)
const narrowest = (tools: RouteTool[], kind: ToolKind): RouteTool | undefined => byWidth(tools, kind)[0]

/** The widest tool of a kind that is no wider than `most`. */
const within = (tools: RouteTool[], kind: ToolKind, most: number): RouteTool | undefined =>
  byWidth(tools, kind)
    .filter((tool) => nm(tool.width) <= nm(most))
    .at(-1)

/** Corners off and rough cylinders. */
export function roughingTool({ tools }: RouteContext): ToolChoice {
  const gouge = widest(tools, 'roughing-gouge')
  if (gouge) return chosen(gouge)
  const spindle = widest(tools, 'spindle-gouge')
  if (spindle)
    return chosen(spindle, 'No roughing gouge on the shop’s list: light cuts with the spindle gouge.')
  return lacking('roughing-gouge')
}

/** Sizing cuts, tenons, parting off. */
export function partingTool({ tools }: RouteContext): ToolChoice {
  const parting = narrowest(tools, 'parting')
  return parting ? chosen(parting) : lacking('parting')
}

/** Shoulders, squared ends and step faces. */
export function facingTool({ tools }: RouteContext): ToolChoice {
  const skew = narrowest(tools, 'skew')
  if (skew) return chosen(skew)
  const parting = narrowest(tools, 'parting')
  return parting ? chosen(parting) : lacking('skew')
}

/** Cylinders and tapers: wide skew, fillets with the parting tool. */
export function straightTool({ tools }: RouteContext, width: number): ToolChoice {
  if (nm(width) < nm(FILLET)) {
    const parting = within(tools, 'parting', width) ?? narrowest(tools, 'parting')
    if (parting && nm(parting.width) <= nm(width)) return chosen(parting)
    const skew = narrowest(tools, 'skew')
    if (skew)
      return chosen(skew, `Narrower than any parting tool of the shop: cut with the point of the skew.`)
  }
  const wide = widest(tools, 'skew') ?? widest(tools, 'spindle-gouge') ?? widest(tools, 'scraper')
  return wide ? chosen(wide) : lacking('skew')
}

/** Beads: the widest skew that can swing in the bead’s own width, else a gouge, else the parting tool. */
export function beadTool({ tools, text }: RouteContext, width: number): ToolChoice {
  const fits =
    within(tools, 'skew', width) ?? within(tools, 'spindle-gouge', width) ?? within(tools, 'parting', width)
  if (fits) return chosen(fits)
  const nearest = narrowest(tools, 'skew') ?? narrowest(tools, 'spindle-gouge') ?? narrowest(tools, 'parting')
  if (!nearest) return { ...lacking('skew'), tool: '1/4 in skew' }
  return chosen(
    nearest,
    `The bead is ${text(width)} wide and no tool of the shop is as narrow: a narrower skew is needed.`,
  )
}

/** Coves: the widest gouge whose nose turns inside the cove. */
export function coveTool({ tools, text }: RouteContext, width: number, radius: number): ToolChoice {
  const most = Math.min(width, 2 * radius)
  const gouge = within(tools, 'spindle-gouge', most)
  if (gouge) return chosen(gouge)
  const scraper = within(tools, 'scraper', most)
  if (scraper) return chosen(scraper, 'No gouge of the shop is narrow enough: scraped, so take light cuts.')
  const nearest = narrowest(tools, 'spindle-gouge') ?? narrowest(tools, 'scraper')
  if (!nearest) return lacking('spindle-gouge')
  return chosen(
    nearest,
    `The cove is ${text(width)} wide and no gouge of the shop is as narrow: a narrower one is needed.`,
  )
}

/** Whether a run of spans only swells: nowhere thinner than the line between its ends. */
function isConvex(feature: Feature): boolean {
  const ends = Math.min(feature.spans[0]!.d0, feature.spans.at(-1)!.d1)
  return feature.kind === 'ovolo' || feature.spans.every((span) => nm(diametersOf(span).least) >= nm(ends))
}

/** Ovolo, cavetto, ogee and free curves: long convex ones with the skew, all others with a gouge. */
export function curveTool(context: RouteContext, feature: Feature): ToolChoice {
  const { tools } = context
  const length = feature.to - feature.from
  const convex = feature.kind !== 'cavetto' && feature.kind !== 'ogee' && isConvex(feature)
  const skew = convex && length >= LONG_CURVE ? widest(tools, 'skew') : undefined
  if (skew) return chosen(skew)
  const gouge = within(tools, 'spindle-gouge', length) ?? narrowest(tools, 'spindle-gouge')
  if (gouge) return chosen(gouge)
  const scraper = within(tools, 'scraper', length)
  return scraper
    ? chosen(scraper, 'No spindle gouge on the shop’s list: scraped, so take light cuts.')
    : lacking('spindle-gouge')
}
