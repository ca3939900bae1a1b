const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y
const WORD = /true|false|null/y
const SPACE = /[ \t\n\r]*/y

/** Where a string that begins at `from` ends (past its quote), or the place of its first fault. */
function stringEnd(text: string, from: number): { at: number; good: boolean } {
  let at = from + 1
  for (; at < text.length && text[at] !== '"'; at++) {
    if (text.charCodeAt(at) < 0x20) return { at, good: false }
    if (text[at] !== '\\') continue
    ESCAPE.lastIndex = at
    const escaped = ESCAPE.exec(text)
    if (!escaped) return { at, good: false }
    at += escaped[0].length - 1
  }
  return { at: at + 1, good: at < text.length }
}

type Expected =
  | 'value'
  | 'value or ]'
  | 'name or }'
  | 'name'
  | ':'
  | ', or ]'
  | ', or }'
  | 'the rest of a string'
  | 'end'

const SENTENCES: Record<Expected, string> = {
  value: 'a value',
  'value or ]': 'a value or ]',
  'name or }': 'a field name in double quotes or }',
  name: 'a field name in double quotes',
  ':': 'a colon',
  ', or ]': 'a comma or ]',
  ', or }': 'a comma or }',
  'the rest of a string': 'the rest of a string (line breaks and other control marks are escaped there)',
  end: 'nothing more',
}

/** Walks over JSON text as far as it is good, and tells where it stops and what should stand there. */
class Walk {
  at = 0
  expected: Expected = 'value'
  readonly #open: ('[' | '{')[] = []
  readonly #text: string

  constructor(text: string) {
    this.#text = text
  }

  /** Whether one more mark of the text was good. */
  step(): boolean {
    this.#match(SPACE)
    const mark = this.#text[this.at]
    if (mark === undefined) return false
    if (this.expected === ':') return this.#take(mark === ':', 'value')
    if (this.expected.startsWith('name')) {
      if (mark === '}' && this.expected === 'name or }') return this.#close()
      return this.#string(mark, ':')
    }
    if (this.expected.startsWith(',')) {
      const closing = this.expected === ', or ]' ? ']' : '}'
      return mark === closing ? this.#close() : this.#take(mark === ',', closing === ']' ? 'value' : 'name')
    }
    return this.expected !== 'end' && this.#value(mark)
  }

  #value(mark: string): boolean {
    if (mark === ']' && this.expected === 'value or ]') return this.#close()
    if (mark === '[' || mark === '{') {
      this.#open.push(mark)
      return this.#take(true, mark === '[' ? 'value or ]' : 'name or }')
    }
    const next = this.#afterValue()
    if (mark === '"') return this.#string(mark, next)
    return [NUMBER, WORD].some((form) => this.#matchThen(form, next))
  }

  #string(mark: string, next: Expected): boolean {
    if (mark !== '"') return false
    const { at, good } = stringEnd(this.#text, this.at)
    this.at = Math.min(at, this.#text.length)
    if (good) this.expected = next
    else this.expected = 'the rest of a string'
    return good
  }

  #afterValue(): Expected {
    const inside = this.#open.at(-1)
    return inside === undefined ? 'end' : inside === '[' ? ', or ]' : ', or }'
  }

  #close(): boolean {
    this.#open.pop()
    return this.#take(true, this.#afterValue())
  }

  #take(good: boolean, next: Expected): boolean {
    if (!good) return false
    this.at += 1
    this.expected = next
    return true
  }

  #match(form: RegExp): boolean {
    form.lastIndex = this.at
    const found = form.exec(this.#text)
    if (found) this.at += found[0].length
    return found !== null
  }

  #matchThen(form: RegExp, next: Expected): boolean {
    if (!this.#match(form)) return false
    this.expected = next
    return true
  }
}

/** Line and column (from 1) where text stops being JSON, what should stand there and what does. */
export function faultOf(text: string): { line: number; column: number; expected: string; read: string } {
  const walk = new Walk(text)
  while (walk.step());
  const before = text.slice(0, walk.at).split('\n')
  const rest = text.slice(walk.at)
  const read =
    rest === '' ? 'the end of the input' : JSON.stringify(/^(?:\w+|.)/su.exec(rest)?.[0].slice(0, 20))
  return { line: before.length, column: before.at(-1)!.length + 1, expected: SENTENCES[walk.expected], read }
}
