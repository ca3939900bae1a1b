export type { Mount } from '../blank/mount.ts'
