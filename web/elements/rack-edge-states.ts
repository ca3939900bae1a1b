import type { Plan } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import type { ToolGrinding } from '../../shared/turning/edge.ts'
import { type CountedEdge, countedEdges, type EdgeState, edgeStates } from '../../shared/turning/edge-wear.ts'
import type { Floor } from '../api-floor.ts'
import { minutesText } from '../time-text.ts'

type Log = Pick<Floor, 'steps' | 'touchUps'>

const floorLog = ({ operations, grinding, blank }: Plan, { steps, touchUps }: Log) => ({
  operations,
  grinding,
  steps,
  touchUps,
  perBlank: blank.stock.perBlank,
})

/** How the edges of a batch stand by what was logged. */
export const edgesOf = (plan: Plan, log: Log): EdgeState[] => edgeStates(floorLog(plan, log))

/** What the log says of the lives of its edges, where it says anything new. */
export const livesOf = (plan: Plan, log: Log): CountedEdge[] => countedEdges(floorLog(plan, log))

/** When an edge wants the stone, in whole pieces: `after 3 more pieces`. */
export function leftText(pieces: number): string {
  const whole = Math.floor(pieces + 1e-9)
  if (whole < 1) return 'before the next piece is done'
  return whole === 1 ? 'after one more piece' : `after ${whole} more pieces`
}

/** How often an edge wants the stone, in whole pieces, never later than it is due. */
export function everyText(pieces: number): string {
  const whole = Math.floor(pieces + 1e-9)
  if (whole < 1) return 'within each piece'
  return whole === 1 ? 'every piece' : `every ${whole} pieces`
}

const tenth = (pieces: number): string => String(Math.round(pieces * 10) / 10)

/** A count of the shop as a question: `You brought it back after 7, 6 and 8 pieces …`. */
export function countedText({ pieces, middle, minutes }: CountedEdge, planned: number): string {
  const counts = pieces.map(tenth)
  const listed = `${counts.slice(0, -1).join(', ')} and ${counts.at(-1)}`
  return `You brought it back after ${listed} pieces; planned was ${everyText(planned)}. Take ${tenth(middle)} ${middle === 1 ? 'piece' : 'pieces'}, ${minutesText(minutes)} of slicing, as its life from now on?`
}

/** Counts kept of one tool at most; older ones make room. */
const MOST_LIVES = 20

/**
 * The shop's tools with a counted life added to one, at the speed and in the wood it was counted in; what it had set as
 * pieces between touch-ups makes way. Undefined where the shop has no such tool any more.
 */
export function toolsWithLife(
  tools: Shop['tools'],
  { tool: name, minutes }: CountedEdge,
  { rim, hardnessN }: Pick<ToolGrinding, 'rim' | 'hardnessN'>,
): Shop['tools'] | undefined {
  if (!tools.some((tool) => tool.name === name)) return undefined
  const life = {
    minutes: Math.round(minutes * 10) / 10,
    ...(rim !== undefined && { rim: Math.round(rim * 100) / 100 }),
    ...(hardnessN !== undefined && { hardnessN }),
  }
  return tools.map((tool) => {
    if (tool.name !== name) return tool
    const { piecesPerEdge: _, lives = [], ...rest } = tool
    return { ...rest, lives: [...lives, life].slice(-MOST_LIVES) }
  })
}
