/** For each cut of a piece and each setting, how many cuts until that setting is wanted again. */
function waitsOf(sequence: number[], settings: number): number[][] {
  const length = sequence.length
  const waits: number[][] = Array.from({ length }, () => [])
  for (let setting = 0; setting < settings; setting++) {
    let wait = 0
    for (let step = 2 * length - 1; step >= 0; step--) {
      wait = sequence[(step + 1) % length] === setting ? 1 : wait + 1
      if (step < length) waits[step]![setting] = wait
    }
  }
  return waits
}

/** Sizes one piece with the calipers as they stand in `set`, which is changed; answers the resets. */
function resetsOfPiece(sequence: number[], waits: number[][], calipers: number, set: number[]): number {
  let resets = 0
  sequence.forEach((wanted, cut) => {
    if (set.includes(wanted)) return
    resets++
    if (set.length < calipers) set.push(wanted)
    else set[set.reduce((far, s, i) => (waits[cut]![s]! > waits[cut]![set[far]!]! ? i : far), 0)] = wanted
  })
  return resets
}

/**
 * Fewest resets of `calipers` calipers when every piece is sized in the same order: `sequence` names the
 * setting (0, 1, …) of each cut of a piece. Of the calipers in reach the one whose setting is wanted again last
 * is changed (Belady, IBM Systems Journal 5 (1966) 78-101). Once the calipers stand as they stood before an
 * earlier piece, what follows repeats.
 *
 * @example oneWayResets([0, 1], 5, 1) // 10
 * @example oneWayResets([0, 1, 2], 5, 3) // 3
 */
export function oneWayResets(sequence: number[], pieces: number, calipers: number): number {
  const waits = waitsOf(sequence, Math.max(-1, ...sequence) + 1)
  const set: number[] = []
  const totals: number[] = []
  const seen = new Map<string, number>()
  let total = 0
  for (let piece = 0; piece < pieces; piece++) {
    const standing = [...set].sort((a, b) => a - b).join()
    const before = seen.get(standing)
    if (before !== undefined) {
      const [period, gained] = [piece - before, total - totals[before]!]
      const left = pieces - piece
      const rest = totals[before + (left % period)]! - totals[before]!
      return total + Math.floor(left / period) * gained + rest
    }
    seen.set(standing, piece)
    totals.push(total)
    total += resetsOfPiece(sequence, waits, calipers, set)
  }
  return total
}
