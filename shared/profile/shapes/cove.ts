import { arcShape } from './arc.ts'

/** A hollow half round or less: the line between the ends less an arc of sagitta `depth`. */
export const cove = arcShape(-1)
