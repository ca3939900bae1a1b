/** Job files to test with: invented, and each a kind of work of its own. */

/** A leg left square at the top, mortised, with a horn. */
export const benchLeg = () => ({
  name: 'Reading bench legs',
  units: 'in',
  species: 'walnut-black',
  moisture: 8,
  serviceMoisture: 8,
  quantity: 8,
  match: true,
  profile: {
    stations: [
      { at: '0', diameter: '1 in', then: 'straight' },
      { at: '1 1/4', diameter: '1 1/4', then: 'bead', rise: '1/4', name: 'foot bead' },
      { at: '1 3/4', diameter: '1 1/4', then: 'straight', check: true },
      { at: '12', diameter: '1 7/8', then: 'square', side: '2 1/4', shoulder: 'square' },
      { at: '16 1/2' },
    ] as Record<string, unknown>[],
    split: false,
  },
  joints: [{ kind: 'mortise', at: '14 1/2', face: 'A', size: ['3/8', '2 1/2'], depth: '1' }] as Record<
    string,
    unknown
  >[],
  mount: 'spur',
})

/** A plain cylinder: two stations. */
export const dowel = () => ({
  name: 'Rail dowels',
  units: 'mm',
  species: 'maple-sugar',
  quantity: 6,
  profile: {
    stations: [
      { at: 0, diameter: 30 },
      { at: 400, diameter: 30 },
    ] as Record<string, unknown>[],
  },
})

/** A short knob, several to a stick, with beads and a cove. */
export const knob = () => ({
  name: 'Cabinet knobs',
  units: 'mm',
  species: 'cherry-black',
  quantity: 24,
  mount: 'chuck',
  perBlank: 'auto',
  profile: {
    stations: [
      { at: 0, diameter: 12, tenon: true, name: 'spigot' },
      { at: 10, diameter: 12 },
      { at: 10, diameter: 16, then: 'cove', depth: 2 },
      { at: 20, diameter: 24, then: 'ovolo' },
      { at: 32, diameter: 32, then: 'bead', rise: 4 },
      { at: 40, diameter: 14 },
    ] as Record<string, unknown>[],
  },
})

/** Forty stations: a row of beads, coves, fillets and a long taper between two pommels. */
export const fortyStations = () => {
  const stations: Record<string, unknown>[] = [{ at: 0, then: 'square', side: 45 }]
  let at = 180
  for (let i = 0; i < 19; i++) {
    stations.push({
      at,
      diameter: 38,
      then: i % 3 === 0 ? 'cove' : 'bead',
      ...(i % 3 === 0 ? { depth: 3 } : { rise: 2 }),
    })
    stations.push({ at: at + 12, diameter: 38 - (i % 2) * 4, then: 'straight' })
    at += 20
  }
  stations.push({ at, diameter: 40, then: 'square', side: 45 }, { at: at + 160 })
  return { name: 'Newel', units: 'mm', species: 'oak-white', quantity: 3, profile: { stations } }
}
