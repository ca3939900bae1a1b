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
  /** Where the figures come from. */
  why: string
}
