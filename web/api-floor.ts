import type { Step, TouchUp, Weighing } from '../shared/piece.ts'
import { ask } from './api.ts'

const job = (id: string) => `/jobs/${encodeURIComponent(id)}`

/** What was logged on the floor during a batch, the oldest first. */
export interface Floor {
  steps: Step[]
  touchUps: TouchUp[]
  weighings: Weighing[]
}

export async function floorOf(jobId: string): Promise<Floor> {
  const [steps, touchUps, weighings] = await Promise.all([
    ask<Step[]>(`${job(jobId)}/steps`),
    ask<TouchUp[]>(`${job(jobId)}/touch-ups`),
    ask<Weighing[]>(`${job(jobId)}/weighings`),
  ])
  return { steps, touchUps, weighings }
}

/** Takes a touch-up or a weighing back; it counts no more. */
export const takeBackNote = (jobId: string, kind: 'touch-up' | 'weighing', key: string) =>
  ask<void>(`${job(jobId)}/${kind}s/${encodeURIComponent(key)}`, { method: 'DELETE' })
