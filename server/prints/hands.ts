import type { Joint } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { type Hand, jointsOfHand } from '../../shared/profile/mirrored-joints.ts'
import { makesHands } from '../../shared/route/hands.ts'

/** The pieces of one hand, with their joints. */
export interface HandJoints {
  /** `left hand, odd numbers`; empty where all pieces are alike. */
  words: string
  joints: Joint[]
}

const words: Record<Hand, string> = {
  left: 'left hand, odd numbers',
  right: 'right hand, even numbers',
}

/** Both hands of a mirrored pair, left first; one where all pieces come out alike. */
export function handsOf(job: Plan['job']): [HandJoints, ...HandJoints[]] {
  const { joints } = job
  if (!makesHands(job)) return [{ words: '', joints }]
  return [
    { words: words.left, joints: jointsOfHand(joints, 'left') },
    { words: words.right, joints: jointsOfHand(joints, 'right') },
  ]
}
