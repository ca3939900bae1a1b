import { arcShape } from './arc.ts'

/** A convex half round or less: the line between the ends plus an arc of sagitta `rise`. */
export const bead = arcShape(1)
