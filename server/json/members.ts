import { pathText } from '../../shared/input.ts'
import type { Breach } from '../../shared/problem.ts'

/** Deepest nesting of lists and objects taken; no file of the trade comes near. */
export const DEPTH_MAX = 64

/** Fields given twice that are told, and how much of a field's name is. */
const TOLD_MAX = 50
const NAME_SHOWN = 80

const [QUOTE, COMMA, BACKSLASH, LINE_END] = [0x22, 0x2c, 0x5c, 0x0a]
const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [0x5b, 0x5d, 0x7b, 0x7d]

/** A list or an object that the scan is inside of, and where in it. */
interface Level {
  isList: boolean
  index: number
  name: string
  /** The line at which each field of an object was given. */
  lines: Map<string, number>
}

/** The place of the quote that ends the string begun at `from`, in good JSON text. */
function closingQuote(text: string, from: number): number {
  for (let end = text.indexOf('"', from + 1); ; end = text.indexOf('"', end + 1)) {
    let slashes = 0
    while (text.charCodeAt(end - 1 - slashes) === BACKSLASH) slashes += 1
    if (slashes % 2 === 0) return end
  }
}

function nameOf(text: string, from: number, end: number): string {
  const written = text.slice(from + 1, end)
  return written.includes('\\') ? (JSON.parse(text.slice(from, end + 1)) as string) : written
}

const shortened = (name: string): string =>
  name.length > NAME_SHOWN ? `${name.slice(0, NAME_SHOWN - 1)}…` : name

/** Walks once over good JSON text, and keeps to what fields are named and how deep lists and objects nest. */
class Scan {
  readonly twice: Breach[] = []
  tooDeep = false
  readonly #text: string
  readonly #levels: Level[] = []
  #depth = 0
  #line = 1
  #awaitsName = false

  constructor(text: string) {
    this.#text = text
  }

  run(): this {
    const text = this.#text
    for (let at = 0; at < text.length && !this.tooDeep; at++) {
      const mark = text.charCodeAt(at)
      if (mark === QUOTE) at = this.#string(at)
      else if (mark === LINE_END) this.#line += 1
      else if (mark === COMMA) this.#next()
      else if (mark === OPEN_LIST || mark === OPEN_OBJECT) this.#open(mark === OPEN_LIST)
      else if (mark === CLOSE_LIST || mark === CLOSE_OBJECT) this.#depth -= 1
    }
    return this
  }

  #open(isList: boolean): void {
    this.tooDeep = this.#depth === DEPTH_MAX
    const level = this.#levels[this.#depth]
    if (!level) this.#levels.push({ isList, index: 0, name: '', lines: new Map() })
    else {
      level.isList = isList
      level.index = 0
      if (level.lines.size > 0) level.lines.clear()
    }
    this.#depth += 1
    this.#awaitsName = !isList
  }

  #next(): void {
    const level = this.#levels[this.#depth - 1]!
    if (level.isList) level.index += 1
    this.#awaitsName = !level.isList
  }

  #string(from: number): number {
    const end = closingQuote(this.#text, from)
    if (this.#awaitsName) this.#name(nameOf(this.#text, from, end))
    this.#awaitsName = false
    return end
  }

  #name(name: string): void {
    const level = this.#levels[this.#depth - 1]!
    level.name = name
    const before = level.lines.get(name)
    if (before === undefined) level.lines.set(name, this.#line)
    else if (this.twice.length < TOLD_MAX) this.twice.push(this.#breach(before))
  }

  #breach(before: number): Breach {
    const steps = this.#levels
      .slice(0, this.#depth)
      .map(({ isList, index, name }) => (isList ? index : shortened(name)))
    const lines = before === this.#line ? `both at line ${before}` : `at lines ${before} and ${this.#line}`
    return { path: pathText(steps), message: `is given twice, ${lines}; a field may be given once` }
  }
}

/** Whether good JSON text nests too deep, and which of its fields are given twice in one object, each with its path. */
export function scanMembers(text: string): { tooDeep: boolean; twice: Breach[] } {
  return new Scan(text).run()
}
