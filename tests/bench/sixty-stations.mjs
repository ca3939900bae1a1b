/** Sixty stations: beads, coves, fillets and tapers in turn between two pommels; mm. */
export function sixtyStations() {
  const stations = [{ at: 0, then: 'square', side: 45 }]
  for (let i = 0, at = 150; i < 58; i++, at += i % 2 ? 8 : 14) {
    const then = ['bead', 'straight', 'cove', 'straight', 'ovolo', 'ogee'][i % 6]
    stations.push({
      at,
      diameter: 36 - (i % 4) * 3,
      then,
      ...(then === 'bead' && { rise: 2 }),
      ...(then === 'cove' && { depth: 2 }),
    })
  }
  stations.push({ at: 920, diameter: 34, then: 'straight' })
  return [...stations.slice(0, 59), { at: 930, diameter: 34 }]
}
