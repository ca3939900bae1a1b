import { grindingAngles, type TurningToolKind } from './bevel.ts'
import { lifeAtRim, toolLifeLaw } from './tool-life.ts'

/** Edge keeping of one tool over the batch; times in minutes. */
export interface ToolGrinding {
  tool: string
  minutesCutting: number
  /** Minutes of cutting between touch-ups. */
  life: number
  /** Pieces between touch-ups. */
  piecesBetween: number
  touchUps: number
  regrinds: number
  minutes: number
  /** Touch-ups before the wheel takes the place of the stone; plans of before it was told lack it. */
  perRegrind?: number
  /** Mean speed at the rim while it cuts, m/s, where it is known, and side hardness of the wood, N. */
  rim?: number
  hardnessN?: number
  /** Angle it is ground to, degrees; absent for a tool of no known kind. */
  angle?: number
  /** Where the figures come from. */
  why: string
}

/** How the edge meets the wood. */
export type CutKind = 'slicing' | 'scraping' | 'parting'

/** Minutes a tool cuts in one way over the whole batch. */
export interface EdgeUse {
  tool: string
  cut: CutKind
  minutes: number
  /** Speed at the rim, m/s, where it is known. */
  rim?: number
}

/** An edge’s life as the shop counted it: minutes of slicing between touch-ups. */
export interface OwnLife {
  minutes: number
  /** Speed at the rim it was counted at, m/s. */
  rim?: number
  /** Side hardness of the wood it was counted in, N. */
  hardnessN?: number
}

export interface EdgeTool {
  name: string
  kind?: TurningToolKind
  steel: 'carbon' | 'hss' | 'powder'
  /** The shop’s own count of pieces between touch-ups; then it rules. */
  piecesPerEdge?: number
  /** Lives of its edge as the shop counted them; they come before the table. */
  lives?: OwnLife[]
}

export interface GrindingInput {
  uses: EdgeUse[]
  tools: EdgeTool[]
  /** Side hardness of the wood, N. */
  hardnessN?: number
  pieces: number
  touchUpsPerRegrind: number
  touchUpMinutes: number
  regrindMinutes: number
}

/** Minutes of slicing hardwood with high-speed steel: middle of the usual 10 to 20. Common practice, no source. */
const BASE_MINUTES = 15
/** Wood the base is meant for, N of side hardness: about red oak or cherry to hard maple. Common practice, no source. */
const BASE_HARDNESS = 5000
/** How hardness shortens life: keeps woods of 3 to 11 kN within 10 to 20 minutes. Common practice, no source. */
const HARDNESS_POWER = 0.5
/** Common practice, no source: carbon steel dulls about twice as fast, powder steel holds about twice as long. */
const steelFactors = { carbon: 0.5, hss: 1, powder: 2 }
/** Common practice, no source: parting rubs at its sides, a scraper’s edge is harder worked. */
const cutFactors: Record<CutKind, number> = { slicing: 1, parting: 0.8, scraping: 0.5 }

const hardnessFactor = (hardnessN = BASE_HARDNESS): number => (BASE_HARDNESS / hardnessN) ** HARDNESS_POWER

/**
 * Minutes of cutting between touch-ups, by steel, kind of cut and side hardness (N) of the wood.
 *
 * @example edgeLife({ steel: 'hss', cut: 'slicing', hardnessN: 5000 }) // 15
 * @example edgeLife({ steel: 'carbon', cut: 'scraping', hardnessN: 20000 }) // 1.875
 */
export function edgeLife(input: { steel: EdgeTool['steel']; cut: CutKind; hardnessN?: number }): number {
  return BASE_MINUTES * steelFactors[input.steel] * cutFactors[input.cut] * hardnessFactor(input.hardnessN)
}

/**
 * How much faster a kind of cut wears an edge than slicing does.
 *
 * @example cutWear('scraping') // 2
 */
export const cutWear = (cut: CutKind = 'slicing'): number => 1 / cutFactors[cut]

/** The shop's own lives as they would be slicing wood of the base hardness at a speed at the rim. */
function ownLife(lives: readonly OwnLife[], rim: number | undefined): number {
  const inBaseWood = lives.map(({ minutes, hardnessN, rim: at }) => ({
    minutes: minutes / hardnessFactor(hardnessN),
    rim: at,
  }))
  const atRim = inBaseWood.flatMap(({ minutes, rim: at }) => (at === undefined ? [] : [{ minutes, rim: at }]))
  return atRim.length < lives.length
    ? lifeAtRim(inBaseWood.map(({ minutes }) => ({ minutes, rim: 1 })))
    : lifeAtRim(atRim, rim)
}

/** Minutes that an edge lasts in one use. */
function lifeIn(use: EdgeUse, { steel, lives = [] }: EdgeTool, hardnessN: number | undefined): number {
  if (lives.length === 0)
    return edgeLife({ steel, cut: use.cut, ...(hardnessN !== undefined && { hardnessN }) })
  return (ownLife(lives, use.rim) * hardnessFactor(hardnessN)) / cutWear(use.cut)
}

/** Edges used up by a tool over the batch. */
function edgesWorn(uses: EdgeUse[], tool: EdgeTool, input: GrindingInput): number {
  if (tool.piecesPerEdge) return input.pieces / tool.piecesPerEdge
  return uses.reduce((sum, use) => sum + use.minutes / lifeIn(use, tool, input.hardnessN), 0)
}

/** How the shop's own lives were brought to this work, as a sentence. */
function ownWhy(lives: readonly OwnLife[]): string {
  const counted = lives.map(
    ({ minutes, rim }) => `${round1(minutes)} min${rim === undefined ? '' : ` at ${round1(rim)} m/s`}`,
  )
  const own = `The shop’s own count: an edge lasted ${counted.join(', ')}`
  const atRim = lives.flatMap(({ minutes, rim }) => (rim === undefined ? [] : [{ minutes, rim }]))
  if (atRim.length < lives.length) return `${own}; no speed was noted with it, so it is not scaled with speed`
  const { n, fitted } = toolLifeLaw(atRim)
  const from = fitted ? 'from these counts' : 'of metal cutting, from memory'
  return `${own}; scaled with the speed at the rim by Taylor’s law, exponent ${n.toFixed(2)} ${from}, by no more than a factor 2`
}

function whyText(uses: EdgeUse[], tool: EdgeTool, input: GrindingInput): string {
  if (tool.piecesPerEdge) return `The shop’s own rule: ${tool.piecesPerEdge} pieces between touch-ups.`
  const cuts = [...new Set(uses.map((use) => `${use.cut} × ${cutFactors[use.cut]}`))].join(', ')
  const wood =
    input.hardnessN === undefined
      ? 'side hardness of the wood unknown, taken as 5000 N'
      : `side hardness ${Math.round(input.hardnessN)} N × ${hardnessFactor(input.hardnessN).toFixed(2)}`
  if (tool.lives?.length) return `${ownWhy(tool.lives)}; ${cuts}; ${wood}.`
  return `${BASE_MINUTES} min of slicing hardwood with high-speed steel (common practice, no source; 10 to 20); ${tool.steel} steel × ${steelFactors[tool.steel]}; ${cuts}; ${wood}.`
}

const round1 = (value: number): number => Math.round(value * 10) / 10

/** Rounds that a shave of binary noise must not turn into one more. */
const wholeUp = (n: number): number => Math.max(0, Math.ceil(n - 1e-9))

/** Mean speed at the rim over the minutes of the uses that have one, m/s. */
function meanRim(uses: readonly EdgeUse[]): number | undefined {
  const known = uses.filter((use) => use.rim !== undefined)
  const minutes = known.reduce((sum, use) => sum + use.minutes, 0)
  return minutes > 0 ? known.reduce((sum, use) => sum + use.rim! * use.minutes, 0) / minutes : undefined
}

/**
 * Touch-ups and regrinds of each tool over the batch; each tool starts it on a fresh edge, and every so many
 * touch-ups the wheel takes the place of the stone. Minutes in and out.
 */
export function grindingFor(input: GrindingInput): ToolGrinding[] {
  const names = [...new Set(input.uses.map((use) => use.tool))]
  return names.map((name): ToolGrinding => {
    const uses = input.uses.filter((use) => use.tool === name && use.minutes > 0)
    const tool: EdgeTool = input.tools.find((t) => t.name === name) ?? { name, steel: 'hss' }
    const minutesCutting = uses.reduce((sum, use) => sum + use.minutes, 0)
    const worn = edgesWorn(uses, tool, input)
    const edges = wholeUp(worn)
    const regrinds = Math.floor(edges / (input.touchUpsPerRegrind + 1))
    const rim = meanRim(uses)
    const between = worn > 0 ? input.pieces / worn : input.pieces
    return {
      tool: name,
      minutesCutting,
      life:
        worn > 0
          ? minutesCutting / worn
          : lifeIn({ tool: name, cut: 'slicing', minutes: 0 }, tool, input.hardnessN),
      piecesBetween: between >= 1 ? Math.floor(between + 1e-9) : between,
      touchUps: edges - regrinds,
      regrinds,
      perRegrind: input.touchUpsPerRegrind,
      minutes: (edges - regrinds) * input.touchUpMinutes + regrinds * input.regrindMinutes,
      ...(rim !== undefined && { rim }),
      ...(input.hardnessN !== undefined && { hardnessN: input.hardnessN }),
      ...(tool.kind && { angle: grindingAngles[tool.kind] }),
      why: whyText(uses, tool, input),
    }
  })
}
