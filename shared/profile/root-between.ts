/**
 * Where a function that grows from one place to another passes nothing, to a share `close` of the values at its
 * ends: false position with halved weights (the Illinois method, Dowell & Jarratt 1971). The nearer end where it
 * does not pass.
 *
 * @example Math.round(rootBetween((x) => x * x - 2, 0, 2) * 1e9) // 1414213562
 */
export function rootBetween(f: (x: number) => number, from: number, to: number, close = 1e-12): number {
  let [a, b, atA, atB] = [from, to, f(from), f(to)]
  if (atA >= 0) return a
  if (atB <= 0) return b
  const enough = close * (atB - atA)
  let side = 0
  for (let round = 0; round < 100; round++) {
    const x = (a * atB - b * atA) / (atB - atA)
    const atX = f(x)
    if (Math.abs(atX) <= enough) return x
    if (atX < 0) {
      ;[a, atA] = [x, atX]
      if (side === -1) atB /= 2
      side = -1
    } else {
      ;[b, atB] = [x, atX]
      if (side === 1) atA /= 2
      side = 1
    }
  }
  return (a + b) / 2
}
