import { describe, expect, it } from 'vitest'
import { usualTerms } from '../../shared/cutting/yard-terms.ts'
import { boughtBoards } from '../../web/yard-bought.ts'
import { YardDesk } from '../../web/yard-desk.ts'
import { freshDefect } from '../../web/yard-entry.ts'
import type { YardGround } from '../../web/yard-needs.ts'
import { onPile } from '../../web/yard-tally.ts'
import { needOf, storageBench } from './yard-bench.ts'

const ground = (more: Partial<YardGround> = {}): YardGround => ({
  units: 'mm',
  currency: 'EUR',
  yards: [],
  woods: [{ key: 'ash-white', name: 'Ash, white' }],
  needs: [needOf(), needOf({ job: 'stool', name: 'Stool legs' })],
  at: '2026-03-07T08:00:00Z',
  ...more,
})

/** Pages of one device: each call is the page opened again, or a second one. */
function device() {
  const bench = storageBench()
  let marks = 0
  const page = (known = ground()) =>
    new YardDesk(
      {
        addController: () => {},
        removeController: () => {},
        requestUpdate: () => {},
        updateComplete: Promise.resolve(true),
      },
      {
        storage: bench.storage,
        now: () => new Date('2026-03-07T09:00:00Z'),
        mark: () => `mark${++marks}`,
        style: () => 'mm',
      },
      known,
    ) // prettier-ignore
  return { ...bench, page }
}

const enter = (desk: YardDesk, width: string, more = {}) =>
  desk.enter({ ...desk.entry, width, length: '2400', thickness: '52', ...more })
const widths = (desk: YardDesk) => onPile(desk.tally).map(({ board }) => board.width)

describe('the desk at the yard', () => {
  it('finds everything again after the battery died: the pile, and the board half entered', () => {
    const { page } = device()
    const desk = page()
    desk.choose(['bench'])
    enter(desk, '185')
    desk.add()
    enter(desk, '2', { defects: [freshDefect('knot')] })
    const again = page()
    expect(again.tally.id).toBe(desk.tally.id)
    expect(widths(again)).toEqual([185])
    expect(again.tally.needs.map(({ job }) => job)).toEqual(['bench'])
    expect(again.entry).toEqual(desk.entry)
  })

  it('finds a half entered board again before any was pulled', () => {
    const { page } = device()
    enter(page(), '18')
    expect(page().entry.width).toBe('18')
  })

  it('loses no board of two pages at work on one tally', () => {
    const { page } = device()
    const one = page()
    enter(one, '185')
    one.add()
    const two = page()
    enter(two, '200')
    two.add()
    enter(one, '150')
    one.add()
    two.again()
    expect(widths(two)).toEqual([185, 200, 150])
    expect(two.tally.boards.map(({ number }) => number)).toEqual([1, 2, 3])
  })

  it('starts from the thickness its jobs want', () => {
    const desk = device().page()
    desk.choose(['bench'])
    expect(desk.entry).toMatchObject({ thickness: '50.8', nominal: '8/4' })
  })

  it('refuses a board by its fields and keeps what was keyed', () => {
    const desk = device().page()
    enter(desk, 'wide')
    desk.add()
    expect(desk.errors.map(({ path }) => path)).toEqual(['width'])
    expect(desk.entry.width).toBe('wide')
    expect(desk.tally.boards).toEqual([])
    enter(desk, '185')
    expect(desk.errors).toEqual([])
  })

  it('keeps length, thickness and price for the next board, and pulls the same once more', () => {
    const desk = device().page()
    enter(desk, '185', { price: '9.5', defects: [{ ...freshDefect('split'), at: ['100', '', '', ''] }] })
    desk.add()
    expect(desk.entry).toMatchObject({
      width: '',
      length: '2400',
      thickness: '52',
      price: '9.5',
      defects: [],
    })
    desk.same()
    const [first, second] = onPile(desk.tally)
    expect(second!.board).toMatchObject({ width: 185, length: 2400, pricePerBoardFoot: 9.5 })
    expect([first!.board.defects?.length, second!.board.defects]).toEqual([1, undefined])
  })

  it('puts a board that was mistyped back into the keys on undo', () => {
    const desk = device().page()
    enter(desk, '185')
    desk.add()
    desk.undo()
    expect(desk.tally.boards).toEqual([])
    expect(desk.entry.width).toBe('185.0')
    desk.add()
    expect(widths(desk)).toEqual([185])
    expect(desk.tally.boards[0]!.number).toBe(1)
  })

  it('leaves what is half entered alone on undo', () => {
    const desk = device().page()
    enter(desk, '185')
    desk.add()
    enter(desk, '20')
    desk.undo()
    expect(desk.entry.width).toBe('20')
  })

  it('changes a board where it lies and goes on with what was being entered', () => {
    const desk = device().page()
    for (const width of ['185', '200']) {
      enter(desk, width)
      desk.add()
    }
    enter(desk, '15')
    desk.act(1, 'mend')
    expect(desk.entry).toMatchObject({ width: '185.0', mends: 1 })
    desk.act(2, 'mend')
    enter(desk, '201')
    desk.add()
    expect(widths(desk)).toEqual([185, 201])
    expect(desk.tally.boards[1]!.board.key).toBe(`7 Mar 2 (${desk.tally.id})`)
    expect(desk.entry).toMatchObject({ width: '15' })
    expect(desk.entry.mends).toBeUndefined()
  })

  it('takes a board anyway, lets go of it, strikes it out, and takes each back', () => {
    const desk = device().page()
    enter(desk, '185')
    desk.add()
    desk.act(1, 'take')
    expect(desk.tally.boards[0]!.taken).toBe(true)
    desk.act(1, 'leave')
    expect(desk.tally.boards[0]!.taken).toBeUndefined()
    desk.act(1, 'out')
    expect(desk.tally.boards).toEqual([])
    desk.undo()
    expect(widths(desk)).toEqual([185])
  })

  it('keeps several tallies, and forgets one for good when asked', () => {
    const { page, kept } = device()
    const desk = page()
    enter(desk, '185')
    desk.add()
    desk.rename('Saturday')
    const first = desk.tally.id
    desk.fresh()
    expect([desk.tally.boards, desk.entry.width]).toEqual([[], ''])
    enter(desk, '90')
    expect(desk.others().map(({ name }) => name)).toEqual(['Saturday'])
    desk.open(first)
    expect([widths(desk), desk.entry.width]).toEqual([[185], ''])
    desk.throwAway()
    expect([...kept.keys()].filter((key) => key.endsWith(first))).toEqual([])
  })

  it('renews what its jobs need and its yard sells by when the server is in reach', () => {
    const { page } = device()
    const terms = { ...usualTerms, name: 'Mill', minimumFeet: 0 }
    const desk = page(ground({ yards: [terms] }))
    desk.choose(['bench'])
    desk.chooseYard('Mill')
    const renamed = needOf({ name: 'Bench legs, twelve' })
    desk.renew(ground({ needs: [renamed], yards: [{ ...terms, minimumFeet: 50 }] }))
    expect(desk.tally.needs[0]!.name).toBe('Bench legs, twelve')
    expect(desk.tally.terms?.minimumFeet).toBe(50)
    // A job that is done or deleted meanwhile: what was known of it stays.
    desk.renew(ground({ needs: [] }))
    expect(desk.tally.needs[0]!.name).toBe('Bench legs, twelve')
  })

  it('says so when the device keeps nothing, and goes on', () => {
    const { page, state } = device()
    const desk = page()
    state.full = true
    enter(desk, '185')
    expect(desk.keeps).toBe(false)
    desk.add()
    enter(desk, '200')
    desk.add()
    expect(widths(desk)).toEqual([185, 200])
    state.full = false
    enter(desk, '1')
    desk.add()
    expect(desk.keeps).toBe(true)
  })

  it('begins for the jobs it is sent with, those of one wood, and keeps the tally at hand', () => {
    const { page } = device()
    const oak = needOf({ job: 'sill', species: 'oak-white' })
    const desk = page(ground({ needs: [needOf(), needOf({ job: 'stool' }), oak] }))
    enter(desk, '185')
    desk.add()
    desk.begin(['stool', 'sill', 'bench', 'gone'])
    expect(desk.tally.needs.map(({ job }) => job)).toEqual(['stool', 'bench'])
    expect(desk.tally.boards).toEqual([])
    expect(desk.others()).toHaveLength(1)
    desk.begin(['gone'])
    expect(desk.tally.needs).toHaveLength(2)
  })

  it('begins for the jobs ticked where the yard was asked, once, and leaves a pile alone', () => {
    const { page } = device()
    const jobs = (desk: YardDesk) => desk.tally.needs.map(({ job }) => job)
    const desk = page()
    desk.beginAsked([])
    expect(jobs(desk)).toEqual([])
    desk.beginAsked(['stool'])
    expect(jobs(desk)).toEqual(['stool'])
    // Chosen otherwise at the yard: that holds, after a reload too, until other jobs are ticked.
    desk.choose(['bench'])
    const again = page()
    again.beginAsked(['stool'])
    expect(jobs(again)).toEqual(['bench'])
    again.beginAsked(['stool', 'bench'])
    expect(jobs(again)).toEqual(['stool', 'bench'])
    enter(again, '185')
    again.add()
    again.beginAsked(['stool'])
    expect([jobs(again), widths(again)]).toEqual([['stool', 'bench'], [185]])
  })

  it('writes on bought boards the wood of the jobs, else the chosen one', () => {
    const desk = device().page()
    enter(desk, '185')
    desk.add()
    const wood = () => boughtBoards(desk.tally, onPile(desk.tally)).map(({ species }) => species)
    expect(wood()).toEqual([undefined])
    desk.chooseWood('ash-white')
    expect(wood()).toEqual(['ash-white'])
    desk.choose(['bench'])
    expect(wood()).toEqual(['maple-sugar'])
  })

  it('is closed once its boards were bought', () => {
    const desk = device().page()
    for (const width of ['185', '200']) {
      enter(desk, width)
      desk.add()
    }
    desk.close(onPile(desk.tally).slice(1))
    expect(desk.tally.bought).toBe('2026-03-07T09:00:00.000Z')
    expect(widths(desk)).toEqual([200])
    expect(desk.tally.boards).toHaveLength(2)
  })
})
