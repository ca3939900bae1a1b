import type { MipModel } from '../mip.ts'

/** How often a column counts in a row. */
export type Entry = readonly [row: number, value: number]

/** A column and what it stands for. */
export interface DraftColumn<Meaning> {
  meaning: Meaning
  entries: readonly Entry[]
}

/** A whole-number model while rows and columns are put to it. */
export class Draft<Meaning> {
  readonly columns: DraftColumn<Meaning>[] = []
  readonly #lower: number[] = []
  readonly #upper: number[] = []

  /** A row between two limits; its number. */
  row(lower: number, upper: number): number {
    this.#upper.push(upper)
    return this.#lower.push(lower) - 1
  }

  /** A column in these rows; its number. */
  column(meaning: Meaning, entries: readonly Entry[]): number {
    return this.columns.push({ meaning, entries }) - 1
  }

  /**
   * The model of least `cost`; each of `caps` is one more row, a sum over all columns with the most it may be.
   */
  model(
    cost: (meaning: Meaning) => number,
    caps: readonly { of: (meaning: Meaning) => number; most: number }[],
  ): MipModel {
    const own = this.#lower.length
    const capped = this.columns.map(({ meaning, entries }) => [
      ...entries,
      ...caps.flatMap(({ of }, i): Entry[] => (of(meaning) === 0 ? [] : [[own + i, of(meaning)]])),
    ])
    const flat = capped.flat()
    const starts = new Int32Array(capped.length + 1)
    capped.forEach((entries, j) => {
      starts[j + 1] = starts[j]! + entries.length
    })
    return {
      cost: Float64Array.from(this.columns, ({ meaning }) => cost(meaning)),
      upper: new Float64Array(capped.length).fill(Number.POSITIVE_INFINITY),
      starts,
      rows: Int32Array.from(flat, ([row]) => row),
      values: Float64Array.from(flat, ([, value]) => value),
      rowLower: Float64Array.from([...this.#lower, ...caps.map(() => Number.NEGATIVE_INFINITY)]),
      rowUpper: Float64Array.from([...this.#upper, ...caps.map(({ most }) => most)]),
    }
  }
}
