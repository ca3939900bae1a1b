/** A cut as it is made: with which caliper (from 0), and whether that is set anew for it. */
export interface CaliperCut {
  cut: number
  caliper: number
  reset: boolean
}

/** A way to size a batch piece by piece. */
export interface SizingWay {
  /** Resets over so many pieces. */
  resets(pieces: number): number
  /** The cuts of each of so many pieces, in order. */
  cuts(pieces: number): CaliperCut[][]
}

/** For each cut of the cycle and each setting, how many cuts until that setting is wanted again. */
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

const resetsIn = (cuts: CaliperCut[]): number => cuts.filter(({ reset }) => reset).length

/** Pieces as they were worked until the calipers stood as before an earlier one; from that one on they repeat. */
function repeated(worked: CaliperCut[][], from: number): SizingWay {
  const period = worked.length - from
  const at = (piece: number): number => (piece < worked.length ? piece : from + ((piece - from) % period))
  const sums = [0]
  for (const cuts of worked) sums.push(sums.at(-1)! + resetsIn(cuts))
  return {
    resets: (pieces) => {
      if (pieces <= worked.length) return sums[pieces]!
      const rounds = Math.floor((pieces - from) / period)
      const rest = sums[from + ((pieces - from) % period)]!
      return rest + rounds * (sums[worked.length]! - sums[from]!)
    },
    cuts: (pieces) => Array.from({ length: pieces }, (_, piece) => worked[at(piece)]!),
  }
}

/**
 * Each piece of a batch worked in the order of `cycle` whose turn it is, a list of cuts; `settingOf` a cut is the
 * setting it needs (0, 1, …). Of the calipers the one whose setting is wanted again last is changed, which no
 * other choice beats for cuts in a given order (Belady, IBM Systems Journal 5 (1966) 78-101).
 *
 * @example keptSettings([[0, 1]], (cut) => cut, 1).resets(5) // 10
 * @example keptSettings([[0, 1, 2]], (cut) => cut, 3).resets(5) // 3
 * @example keptSettings([[0, 1, 2], [2, 1, 0]], (cut) => cut, 2).resets(5) // 7
 */
export function keptSettings(
  cycle: number[][],
  settingOf: (cut: number) => number,
  calipers: number,
): SizingWay {
  const sequence = cycle.flat().map(settingOf)
  const waits = waitsOf(sequence, Math.max(-1, ...sequence) + 1)
  const starts = cycle.map((_, i) => cycle.slice(0, i).flat().length)
  const set: number[] = []
  const made = (cut: number, wait: number[]): CaliperCut => {
    const wanted = settingOf(cut)
    const standing = set.indexOf(wanted)
    if (standing >= 0) return { cut, caliper: standing, reset: false }
    const last = set.reduce((far, setting, i) => (wait[setting]! > wait[set[far]!]! ? i : far), 0)
    const caliper = set.length < calipers ? set.length : last
    set[caliper] = wanted
    return { cut, caliper, reset: true }
  }
  const seen = new Map<string, number>()
  const worked: CaliperCut[][] = []
  for (;;) {
    const turn = worked.length % cycle.length
    const state = `${turn}: ${set}`
    const before = seen.get(state)
    if (before !== undefined) return repeated(worked, before)
    seen.set(state, worked.length)
    worked.push(cycle[turn]!.map((cut, i) => made(cut, waits[starts[turn]! + i]!)))
  }
}

/** How often a caliper is set anew, over and over through the cycle, when it serves these settings alone. */
function changesIn(sequence: number[], settings: ReadonlySet<number>): number {
  const own = sequence.filter((setting) => settings.has(setting))
  return own.filter((setting, i) => setting !== own.at(i - 1)).length
}

interface Group {
  settings: ReadonlySet<number>
  changes: number
  /** What it costs to put another group to it, known so far. */
  added: Map<Group, number>
}

/** The settings dealt out to the calipers: those two are put together, again and again, that cost least together. */
function dealtOut(sequence: number[], calipers: number): ReadonlySet<number>[] {
  const groupOf = (settings: ReadonlySet<number>): Group => ({
    settings,
    changes: changesIn(sequence, settings),
    added: new Map(),
  })
  const together = (a: Group, b: Group): Group => groupOf(new Set([...a.settings, ...b.settings]))
  const addedBy = (a: Group, b: Group): number => {
    const known = a.added.get(b) ?? together(a, b).changes - a.changes - b.changes
    a.added.set(b, known)
    return known
  }
  const groups = [...new Set(sequence)].map((setting) => groupOf(new Set([setting])))
  while (groups.length > calipers) {
    let best: { added: number; a: Group; b: Group } | undefined
    for (const [i, b] of groups.entries())
      for (const a of groups.slice(0, i)) {
        const added = addedBy(a, b)
        if (!best || added < best.added) best = { added, a, b }
      }
    const { a, b } = best!
    groups.splice(groups.indexOf(b), 1)
    groups.splice(groups.indexOf(a), 1, together(a, b))
  }
  return groups.map(({ settings }) => settings)
}

/**
 * The same with settings that keep to a caliper of their own: easily kept to, though some order may come out with fewer
 * resets.
 *
 * @example ownCalipers([[0, 1, 2], [2, 1, 0]], (cut) => cut, 2).resets(5) // 7
 */
export function ownCalipers(
  cycle: number[][],
  settingOf: (cut: number) => number,
  calipers: number,
): SizingWay {
  const groups = dealtOut(cycle.flat().map(settingOf), calipers)
  const standing: number[] = []
  const pieceOf = (order: number[]): CaliperCut[] =>
    order.map((cut) => {
      const setting = settingOf(cut)
      const caliper = groups.findIndex((group) => group.has(setting))
      const reset = standing[caliper] !== setting
      standing[caliper] = setting
      return { cut, caliper, reset }
    })
  // Once through the cycle each caliper stands as it does at the end of every further one.
  return repeated([...cycle, ...cycle].map(pieceOf), cycle.length)
}
