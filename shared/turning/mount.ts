import type { Mount } from '../blank/mount.ts'

export type { Mount } from '../blank/mount.ts'

/** How the blank is held, in words. */
export const mountWords: Record<Mount, string> = {
  spur: 'the spur centre',
  cup: 'the cup centre',
  chuck: 'the chuck',
  screw: 'the screw chuck',
  jam: 'the jam chuck',
}

/**
 * First bending frequency of a bar clamped at one end and free at the other over that of the same bar on two
 * supports: (1.8751 / π)², the first root of cos x · cosh x = −1 over π, squared (any vibration text).
 */
const CLAMPED_FREE = (1.875104069 / Math.PI) ** 2

/**
 * Factor on the critical speed between centres for another mount. A chuck is steadied by the tail centre and
 * counts as two supports, which errs on the slow side; screw and jam chuck hold one end only.
 *
 * @example mountFactor('spur') // 1
 */
export function mountFactor(mount: Mount): number {
  return mount === 'screw' || mount === 'jam' ? CLAMPED_FREE : 1
}
