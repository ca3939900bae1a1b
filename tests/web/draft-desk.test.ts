import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { DraftDesk } from '../../web/draft-desk.ts'
import { DraftShelf } from '../../web/drafts.ts'
import { DraftSaver } from '../../web/save-draft.ts'

interface Leg {
  name: string
  units: 'mm'
  profile: { stations: [] }
}
interface Kept extends Leg {
  id: string
  revision: number
}

const leg = (name: string): Leg => ({ name, units: 'mm', profile: { stations: [] } })

/** What a browser stores, as `Object.keys` sees it. */
class Storage {
  [place: string]: unknown
  getItem(place: string) {
    return (this[place] as string | undefined) ?? null
  }
  setItem(place: string, text: string) {
    if (full) throw new Error('no room')
    this[place] = text
  }
  removeItem(place: string) {
    delete this[place]
  }
}
let full = false

beforeEach(() => {
  full = false
  vi.stubGlobal('localStorage', new Storage())
  vi.stubGlobal('sessionStorage', new Storage())
  vi.stubGlobal('addEventListener', () => {})
})
afterEach(() => vi.unstubAllGlobals())

const host = {
  addController() {},
  removeController() {},
  requestUpdate() {},
  updateComplete: Promise.resolve(true),
}

/** A desk on the leg `a`, revision 1, whose saves are answered by hand. */
function deskOnLeg() {
  const answers: (() => void)[] = []
  const shelf = new DraftShelf<Leg>('legs.', () => true)
  const saver = new DraftSaver<Leg, Kept>({
    add: async (file) => ({ ...file, id: 'a', revision: 1 }),
    change: (id, revision, file) =>
      new Promise((resolve) => answers.push(() => resolve({ ...file, id, revision: revision + 1 }))),
    load: async () => ({ ...leg('theirs'), id: 'a', revision: 9 }),
    sent: (file) => file,
    fileOf: ({ name }) => leg(name),
  })
  const desk = new DraftDesk<Leg, Kept>(host, {
    shelf,
    saver,
    load: async () => ({ ...leg('theirs'), id: 'a', revision: 9 }),
    changed() {},
    stored() {},
    reload: async () => {},
    focus() {},
  })
  const begin = (name = 'Leg', revision = 1) =>
    desk.begin({ file: leg(name), revision }, () => leg('something new'))
  const write = (name: string) => desk.change({ ...desk.draft!, file: leg(name) })
  desk.turnTo('a')
  begin()
  return { desk, shelf, begin, write, answer: () => answers.shift()!() }
}

describe('a desk whose file is fetched again', () => {
  it('while it is being saved saves to the end, and is saved', async () => {
    const { desk, shelf, begin, write, answer } = deskOnLeg()
    write('Leg, thinner')
    const saving = desk.save([])
    // Heard of late: what was stored before the save.
    begin()
    answer()
    await saving
    expect(desk).toMatchObject({ saved: true, message: 'Saved.' })
    expect(desk.draft).toMatchObject({ file: { name: 'Leg, thinner' }, revision: 2 })
    expect(shelf.has('a')).toBe(false)
  })

  it('while it is written keeps what is written, without a word of edits from before', () => {
    const { desk, begin, write } = deskOnLeg()
    write('Leg, thinner')
    begin('Leg of somebody else', 2)
    expect(desk).toMatchObject({ saved: false, message: '' })
    // Still on the revision it was begun on: a save tells of the change by somebody else.
    expect(desk.draft).toMatchObject({ file: { name: 'Leg, thinner' }, revision: 1 })
  })

  it('keeps what is written also where the device has no room for it', () => {
    const { desk, begin, write } = deskOnLeg()
    full = true
    write('Leg, thinner')
    begin()
    expect(desk.draft).toMatchObject({ file: { name: 'Leg, thinner' } })
    expect(desk.saved).toBe(false)
  })

  it('shows what is stored now once the edits are dropped', async () => {
    const { desk, begin, write } = deskOnLeg()
    full = true
    write('Leg, thinner')
    full = false
    await desk.discard()
    begin('Leg, stored meanwhile', 2)
    expect(desk.draft).toMatchObject({ file: { name: 'Leg, stored meanwhile' }, revision: 2 })
    expect(desk.saved).toBe(true)
  })
})

describe('a desk turned to another file while one is being saved', () => {
  it('leaves the other one alone; the first is saved and its edits forgotten here', async () => {
    const { desk, shelf, write, answer } = deskOnLeg()
    write('Leg, thinner')
    const saving = desk.save([])
    desk.turnTo('b')
    desk.begin({ file: leg('Another leg'), revision: 4 }, () => leg('something new'))
    answer()
    await saving
    expect(desk.draft).toMatchObject({ file: { name: 'Another leg' }, revision: 4 })
    expect(shelf.has('a')).toBe(false)
  })
})

describe('a desk whose new file has just been stored', () => {
  it('keeps what is written before the page has turned to it', async () => {
    const { desk, shelf, write } = deskOnLeg()
    desk.turnTo('')
    desk.begin(undefined, () => leg('New leg'))
    write('New leg, measured')
    await desk.save([])
    write('New leg, measured further')
    expect(shelf.of('a')?.file.name).toBe('New leg, measured further')
    expect(shelf.has('')).toBe(false)
    desk.turnTo('a')
    desk.begin({ file: leg('New leg, measured'), revision: 1 }, () => leg('something new'))
    expect(desk.draft).toMatchObject({ file: { name: 'New leg, measured further' }, revision: 1 })
  })
})

describe('a desk with something new', () => {
  it('tells of no edits before anything is typed, and of those that were', async () => {
    const { desk } = deskOnLeg()
    desk.turnTo('')
    desk.begin(undefined, () => leg(''))
    expect(desk.message).toBe('Nothing typed yet.')
    await desk.save([{ path: 'name', message: 'is missing' }])
    expect(desk.message).toBe('Nothing typed yet.')
    desk.change({ ...desk.draft!, file: leg('New leg') })
    expect(desk.message).toBe('')
    expect(desk.saved).toBe(false)
    desk.turnTo('')
    desk.begin(undefined, () => leg(''))
    expect(desk.message).toBe('Your unsaved edits from this device are back.')
  })
})
