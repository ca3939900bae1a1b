import { quarterEllipse } from './quarter-ellipse.ts'

/** A convex quarter ellipse, upright at its small end: falling, r = r1 + (r0−r1)·√(1−t²). */
export const ovolo = quarterEllipse('small')
