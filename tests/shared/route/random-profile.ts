import type { Profile, ShapeName, Station } from '../../../shared/profile/profile.ts'

/** A stream of numbers from 0 to 1 that is the same for the same seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const shapes: ShapeName[] = ['straight', 'bead', 'cove', 'ovolo', 'cavetto', 'ogee', 'curve', 'square']

/** A sound profile of any make: 2 to 30 stations, with steps, tenons, rows of beads, squares at ends and between. */
export function randomProfile(random: () => number): Profile {
  const between = (least: number, most: number): number =>
    least + Math.round(random() * (most - least) * 8) / 8
  const side = between(36, 80)
  const stations: Station[] = []
  const spans = 1 + Math.floor(28 * random() * random() * random())
  let at = 0
  let width = between(4, 60)
  let diameter = between(12, side - 4)
  let before: ShapeName | undefined
  for (let i = 0; i < spans; i++) {
    const again = before === 'bead' && random() < 0.5
    const then = again ? 'bead' : shapes[Math.floor(random() * (before === 'square' ? 7 : 8))]!
    if (!again) {
      width = random() < 0.1 ? between(100, 400) : between(4, 60)
      if (random() < 0.7) diameter = between(12, side - 4)
    }
    const station: Station = { at, diameter, then }
    if (then === 'square') Object.assign(station, { side, shoulder: random() < 0.5 ? 'square' : 'rounded' })
    if (then === 'square' && width < side) width = side
    if (then === 'bead') station.rise = Math.min(width / 4, 2)
    if (then === 'cove') station.depth = Math.min(width / 2, 3)
    if (then === 'straight' && (i === 0 || i === spans - 1) && random() < 0.3) station.tenon = true
    if (random() < 0.2) station.name = `ring ${i}`
    if (before !== undefined && before !== 'square' && then !== 'square' && random() < 0.15)
      stations.push({ at, diameter: between(12, side - 4), then: 'straight' })
    stations.push(station)
    at += width
    before = then
  }
  stations.push({ at, diameter: random() < 0.5 ? diameter : between(12, side - 4), then: 'straight' })
  return { stations, split: random() < 0.05 }
}
