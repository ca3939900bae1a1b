import { inches, type LengthStyle, lengthFigure, nm } from '../units/length.ts'
import { gradeRules } from './board-grade.ts'
import { yardSize } from './list-words.ts'
import type { YardList } from './yard-list.ts'

/** Characters a message has at most: two texts of a phone. */
export const MESSAGE_MOST = 320

/** What a yard is written about: the list, and the wood by the name the yard knows it by. */
export interface Wanted {
  list: YardList
  wood: string
}

/** A piece of a message; the higher `last` is, the sooner it is left out where there is no room. */
interface Phrase {
  text: string
  last: number
}

const NAME_MOST = 40

const short = (name: string): string =>
  name.length <= NAME_MOST ? name : `${name.slice(0, NAME_MOST - 1).trimEnd()}…`

/** A length as it is written to a yard, none smaller than it is: `1-7/8"`, `1.875"`, `48 mm`. */
function size(mm: number, style: LengthStyle): string {
  const read = yardSize(mm, style)
  return style === 'mm' ? `${Math.round(read)} mm` : `${lengthFigure(read, style)}"`
}

const dry = { kiln: 'KD', air: 'air dried', green: 'green' } as const
const gradeWords = { FAS: 'FAS', Selects: 'Selects & better', '1C': '1 Common', '2A': '2A Common' } as const
const grainWords = { any: '', rift: 'rift or quartered', straight: 'straight grain' } as const

/** What is asked for: feet, thickness, wood, grade, dryness and so on. */
function need({ list, wood }: Wanted, style: LengthStyle): Phrase[] {
  const sticks = list.dressed.map(
    ({ sticks, nominal, lengthFt }) =>
      `${sticks} ${sticks === 1 ? 'piece' : 'pieces'} ${nominal.join('x')} ${lengthFt}'`,
  )
  const grade = list.softwood ? 'clear' : gradeWords[list.grade]
  const start =
    sticks.length > 0
      ? sticks.join(' and ')
      : `${list.boardFeet.ask} bd ft${list.nominal ? ` ${list.nominal}` : ''}`
  const finish = sticks.length > 0 ? 'free of heart' : list.surfaced ? 'S2S' : 'rough'
  return [
    { text: `${start} ${short(wood)}, ${grade}, ${dry[list.dryness]}, ${finish}`, last: 0 },
    ...(list.sap === 'none' && !list.softwood ? [{ text: ', no sap', last: 3 }] : []),
    ...(list.grain === 'any' ? [] : [{ text: `, ${grainWords[list.grain]}`, last: 2 }]),
    ...(list.oneBoard ? [{ text: ', all out of one board', last: 2 }] : []),
    ...(sticks.length > 0 ? [] : measures(list, style)),
  ]
}

/** How thick, wide and long the boards should be; a width the grade has anyhow goes without saying. */
function measures(list: YardList, style: LengthStyle): Phrase[] {
  const lengths = list.bestLengths.slice(0, 2).map(({ lengthFt }) => `${lengthFt}'`)
  const wide = !list.softwood && nm(list.leastWidth) <= nm(inches(gradeRules[list.grade].leastBoard[0]))
  return [
    { text: `, ${size(list.leastThickness, style)} thick or more`, last: 1 },
    ...(wide ? [] : [{ text: `, ${size(list.leastWidth, style)} and wider`, last: 4 }]),
    ...(lengths.length > 0 ? [{ text: `, best ${lengths.join(' or ')} long`, last: 5 }] : []),
  ]
}

/** What the wood is for: the squares that are to come out of it. */
function purpose(wanted: readonly Wanted[], style: LengthStyle): Phrase[] {
  const squares = wanted.flatMap(({ list }) =>
    list.blanks
      .filter(({ count }) => count > 0)
      .map(
        ({ count, layers, sawn, length }) =>
          `${Math.ceil(count / layers)} @ ${size(sawn, style)} x ${size(length, style)}`,
      ),
  )
  const ready = wanted.flatMap(({ list }) => list.squares)
  return [
    { text: ` For turning squares (${squares.join(', ')}), so clear all round.`, last: 6 },
    ...(wanted.every(({ list }) => list.oneBoard) ? [] : [{ text: ' Same log or lot if you can.', last: 7 }]),
    ...(ready.length === 1
      ? [{ text: ` Clear ${size(ready[0]!.side, style)} squares would do too.`, last: 8 }]
      : []),
  ]
}

const GREETING = 'Hi, do you have '
const QUESTION = ' What price, and when could I pick it up?'

/** One message about all of these, as full as there is room for; nothing where even the shortest is too long. */
function oneMessage(wanted: readonly Wanted[], style: LengthStyle, from: string): string | undefined {
  const needs = wanted.map((each) => need(each, style))
  const rest = purpose(wanted, style)
  const signed = from ? ` Thanks, ${short(from)}` : ' Thanks!'
  const most = Math.max(...[...needs.flat(), ...rest].map(({ last }) => last))
  for (let last = most; last >= 0; last--) {
    const kept = (phrases: Phrase[]) =>
      phrases
        .filter((phrase) => phrase.last <= last)
        .map(({ text }) => text)
        .join('')
    const text = `${GREETING}${needs.map(kept).join('; ')}?${kept(rest)}${QUESTION}${signed}`
    if (text.length <= MESSAGE_MOST) return text
  }
  return undefined
}

/**
 * What to write to a yard, in messages of at most 320 characters: one where it fits, else the list is divided. Of what
 * there is no room for, the least needful goes first. Nothing is written of what need not be bought.
 */
export function yardMessages(wanted: readonly Wanted[], style: LengthStyle, from: string): string[] {
  const open = wanted.filter(({ list }) => list.boardFeet.ask > 0)
  if (open.length === 0) return []
  const one = oneMessage(open, style, from)
  if (one !== undefined || open.length === 1) return one === undefined ? [] : [one]
  const middle = Math.ceil(open.length / 2)
  return [
    ...yardMessages(open.slice(0, middle), style, from),
    ...yardMessages(open.slice(middle), style, from),
  ]
}
