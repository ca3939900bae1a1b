import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { RackBoard } from '../shared/contract/board.ts'
import type { PutBack } from '../shared/cutting/pick.ts'
import type { Breach } from '../shared/problem.ts'
import type { LengthStyle } from '../shared/units/length.ts'
import { closedTally } from './yard-bought.ts'
import {
  type BoardEntry,
  entryOf,
  freshEntry,
  nextEntry,
  quarterText,
  readEntry,
  thicknessText,
} from './yard-entry.ts'
import { withGround, type YardGround } from './yard-needs.ts'
import { TallyShelf } from './yard-shelf.ts'
import {
  onPile,
  type PulledBoard,
  restacked,
  undone,
  withBoard,
  withChange,
  withoutBoard,
  type YardTally,
} from './yard-tally.ts'

/** What the desk stands on: the device's storage, the clock, chance, and the way lengths are keyed. */
export interface DeskParts {
  storage: Storage
  now: () => Date
  /** Five letters and figures that no other tally has. */
  mark: () => string
  style: (tally: YardTally) => LengthStyle
}

const OPEN = 'setwright.yard-open'
const ENTRY = 'setwright.yard-entry.'
const ASKED = 'setwright.yard-asked'

/** What can be done with a board of the pile. */
export type PileAct = 'mend' | 'take' | 'leave' | 'out' | 'again'

/**
 * The tally at hand and the board being entered. Everything is kept on the device as it is pressed; another page at
 * work on the same tally is heeded.
 */
export class YardDesk implements ReactiveController {
  tally!: YardTally
  entry: BoardEntry = freshEntry()
  errors: Breach[] = []
  ground: YardGround
  private readonly host: ReactiveControllerHost
  private readonly parts: DeskParts
  private readonly shelf: TallyShelf
  private entryKept = true

  constructor(host: ReactiveControllerHost, parts: DeskParts, ground: YardGround) {
    this.host = host
    this.parts = parts
    this.shelf = new TallyShelf(parts.storage)
    this.ground = ground
    host.addController(this)
    this.open(this.kept(OPEN) ?? '')
  }

  hostConnected() {}

  private kept(place: string): string | null {
    try {
      return this.parts.storage.getItem(place)
    } catch {
      return null
    }
  }

  private keepText(place: string, text: string): boolean {
    try {
      this.parts.storage.setItem(place, text)
      return true
    } catch {
      return false
    }
  }

  /** False while this device has no room: then all lasts as long as the page. */
  get keeps(): boolean {
    return this.shelf.keeps && this.entryKept
  }

  get style(): LengthStyle {
    return this.parts.style(this.tally)
  }

  /** Tallies of this device but the one at hand. */
  others(): YardTally[] {
    return this.shelf.all().filter(({ id }) => id !== this.tally.id)
  }

  /** Takes up a tally; without one of that id the latest that is not bought, or a new one under that id. */
  open(id: string): void {
    const known = this.shelf.of(id) ?? (id ? undefined : this.shelf.all().find(({ bought }) => !bought))
    this.take(known ?? this.freshTally(id || this.parts.mark()))
  }

  /** Begins a tally; the one at hand is kept. */
  fresh(): void {
    this.take(this.freshTally(this.parts.mark()))
  }

  private freshTally(id: string): YardTally {
    const at = this.parts.now()
    const day = at.toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })
    const { units, currency, grade, yards } = this.ground
    return {
      id,
      day,
      name: `Yard, ${day}`,
      units,
      currency,
      needs: [],
      boards: [],
      steps: [],
      changedAt: at.toISOString(),
      ...(yards[0] && { terms: yards[0] }),
      ...(grade !== undefined && { grade }),
    }
  }

  private take(tally: YardTally): void {
    this.tally = tally
    this.errors = []
    this.entry = this.keptEntryOf(tally)
    this.keepText(OPEN, tally.id)
    this.host.requestUpdate()
  }

  private keptEntryOf(tally: YardTally): BoardEntry {
    try {
      const kept = JSON.parse(this.kept(ENTRY + tally.id) ?? 'null') as Partial<BoardEntry> | null
      return kept ? { ...freshEntry(), ...kept } : this.firstEntry(tally)
    } catch {
      return this.firstEntry(tally)
    }
  }

  /** What a tally's first board starts from: the thickness its jobs want. */
  private firstEntry(tally: YardTally): BoardEntry {
    const [need] = tally.needs
    if (!need) return freshEntry()
    const style = this.parts.style(tally)
    const thickness =
      need.nominal && !need.surfaced ? quarterText(need.nominal, style) : thicknessText(need.thickness, style)
    return { ...freshEntry(), thickness, nominal: need.nominal }
  }

  /** Reads the tally again: another page changed it. */
  again(): void {
    const known = this.shelf.of(this.tally.id)
    if (known) this.tally = known
    this.host.requestUpdate()
  }

  private change(edit: (now: YardTally) => YardTally): void {
    this.tally = this.shelf.change(this.tally, this.parts.now().toISOString(), edit)
    this.host.requestUpdate()
  }

  /** Keeps the entry as it is now. */
  enter(entry: BoardEntry): void {
    this.entry = entry
    this.errors = []
    this.entryKept = this.keepText(ENTRY + this.tally.id, JSON.stringify(entry))
    this.host.requestUpdate()
  }

  private get reading() {
    const { style, tally } = this
    return readEntry(this.entry, { style, units: tally.units, grade: tally.grade })
  }

  /** The board as far as it is entered; nothing while something is missing or wrong. */
  get entered(): Omit<RackBoard, 'key'> | undefined {
    const read = this.reading
    return 'board' in read ? read.board.board : undefined
  }

  /** Puts the board that is entered on the pile, or changes the one that is being changed. */
  add(): void {
    const read = this.reading
    if ('errors' in read) {
      this.errors = read.errors
      this.host.requestUpdate()
      return
    }
    const { mends } = this.entry
    this.change((tally) =>
      mends === undefined
        ? withBoard(tally, read.board)
        : withChange(tally, mends, ({ number, board, taken, back }) => ({
            number,
            ...read.board,
            board: { ...read.board.board, key: board.key },
            ...(taken && { taken }),
            ...(back && { back }),
          })),
    )
    this.enter(nextEntry(this.entry))
  }

  /** One more board of the size of the top one, without its defects. */
  same(): void {
    const top = onPile(this.tally).at(-1)
    if (!top) return
    const { key: _key, defects: _defects, crook: _crook, ...board } = top.board
    const { nominal } = top
    this.change((tally) => withBoard(tally, { ...(nominal !== undefined && { nominal }), board }))
  }

  /** Leaves the board that was to be changed as it is. */
  leave(): void {
    this.enter(nextEntry(this.entry))
  }

  /** Takes back what was done last. A board that was just put on the pile goes back into the keys. */
  undo(): void {
    const before = this.tally
    this.change(undone)
    const still = new Set(this.tally.boards.map(({ board }) => board.key))
    const [gone] = before.boards.filter(({ board }) => !still.has(board.key))
    const isIdle = this.entry.width.trim() === '' && this.entry.defects.length === 0
    if (gone && isIdle) this.enter({ ...entryOf(gone, this.style), mends: undefined })
  }

  /** Does something with a board of the pile. */
  act(number: number, act: PileAct): void {
    const change = (edit: (old: PulledBoard) => PulledBoard) =>
      this.change((tally) => withChange(tally, number, edit))
    switch (act) {
      case 'mend': {
        const pulled = this.tally.boards.find((each) => each.number === number)
        const before = this.entry.mends === undefined ? this.entry : this.entry.before
        if (pulled) this.enter({ ...entryOf(pulled, this.style), before })
        return
      }
      case 'take':
        change((old) => ({ ...old, taken: true }))
        return
      case 'leave':
        change(({ taken: _taken, ...old }) => old)
        return
      case 'again':
        change(({ back: _back, ...old }) => old)
        return
      case 'out':
        this.change((tally) => withoutBoard(tally, number))
        if (this.entry.mends === number) this.leave()
    }
  }

  /** The boards that were to go back are back. */
  restack(back: PutBack): void {
    this.change((tally) => restacked(tally, back))
  }

  rename(name: string): void {
    if (name.trim()) this.change((tally) => ({ ...tally, name: name.trim() }))
  }

  /** What is bought for: jobs by their ids. */
  choose(jobs: readonly string[]): void {
    const known = [...this.ground.needs, ...this.tally.needs]
    const needs = jobs.flatMap((id) => known.find(({ job }) => job === id) ?? [])
    const { units, currency } = needs[0]?.order ?? this.ground
    this.change((tally) => ({ ...tally, needs, units, currency }))
    if (this.tally.boards.length === 0 && !this.entry.thickness) {
      const { thickness, nominal } = this.firstEntry(this.tally)
      this.enter({ ...this.entry, thickness, nominal })
    }
  }

  /** Begins a visit for these jobs, as far as they are of one wood; a tally with boards is kept and laid aside. */
  begin(jobs: readonly string[]): void {
    const needs = jobs.flatMap((id) => this.ground.needs.find(({ job }) => job === id) ?? [])
    const ids = needs.filter(({ species }) => species === needs[0]!.species).map(({ job }) => job)
    if (ids.length === 0) return
    if (this.tally.boards.length > 0 || this.tally.bought) this.fresh()
    this.choose(ids)
    this.keepText(ASKED, jobs.join())
  }

  /** Begins for the jobs ticked where the yard was asked, once for each choice of them, as long as nothing was pulled. */
  beginAsked(jobs: readonly string[]): void {
    const { boards, bought } = this.tally
    if (boards.length === 0 && !bought && jobs.join() !== this.kept(ASKED)) this.begin(jobs)
  }

  /** The yard by its name in the shop's list; none for `''`. */
  chooseYard(name: string): void {
    const terms = this.ground.yards.find((yard) => yard.name === name)
    this.change(({ terms: _terms, ...tally }) => ({ ...tally, ...(terms && { terms }) }))
  }

  /** The wood of a tally that is for no job; none said for `''`. */
  chooseWood(species: string): void {
    this.change(({ species: _species, ...tally }) => ({ ...tally, ...(species && { species }) }))
  }

  chooseGrade(grade: string): void {
    this.change(({ grade: _grade, ...tally }) => ({ ...tally, ...(grade && { grade }) }))
  }

  /** What was fetched from the server: the jobs of this tally as they are now. */
  renew(ground: YardGround): void {
    this.ground = ground
    const isNew = this.tally.needs.length + this.tally.boards.length === 0
    if (isNew && !this.shelf.of(this.tally.id)) {
      const { id, name } = this.tally
      this.tally = { ...this.freshTally(id), name }
    } else if (
      !this.tally.bought &&
      JSON.stringify(withGround(this.tally, ground)) !== JSON.stringify(this.tally)
    )
      this.change((tally) => withGround(tally, ground))
    this.host.requestUpdate()
  }

  /** Closes a tally, the one at hand or another, once these boards of it were bought. */
  close(bought: readonly PulledBoard[], tally = this.tally): void {
    const at = this.parts.now().toISOString()
    const closed = this.shelf.change(tally, at, (now) => closedTally(now, bought, at))
    if (closed.id === this.tally.id) this.tally = closed
    this.host.requestUpdate()
  }

  /** Forgets the tally and its entry for good. */
  throwAway(): void {
    this.shelf.drop(this.tally.id)
    this.parts.storage.removeItem(ENTRY + this.tally.id)
    this.parts.storage.removeItem(OPEN)
    this.open('')
  }
}
