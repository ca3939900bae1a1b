import { quarterEllipse } from './quarter-ellipse.ts'

/** A hollow quarter ellipse, upright at its large end: falling, r = r1 + (r0−r1)·(1−√(1−(1−t)²)). */
export const cavetto = quarterEllipse('large')
