import { describe, expect, it } from 'vitest'
import type { EnteredJoint, EnteredStation } from '../../web/job-file.ts'
import {
  editedDraft,
  type History,
  historyInUnits,
  redoneDraft,
  undoneDraft,
  type WithHistory,
} from '../../web/undo.ts'

const station = (at: string, diameter = '1'): EnteredStation => ({ at, diameter })
const mortise: EnteredJoint = { kind: 'mortise', at: '2', size: ['1/4', '1'], depth: '1/2' }

interface Draft extends WithHistory {
  file: { profile: { stations: EnteredStation[] }; joints?: EnteredJoint[]; name?: string }
}

const draft = (...stations: EnteredStation[]): Draft => ({ file: { profile: { stations } } })
const withStations = ({ file }: Draft, ...stations: EnteredStation[]) => ({ ...file, profile: { stations } })
const ats = (from: Draft | undefined) => from?.file.profile.stations.map(({ at }) => at)

describe('editedDraft', () => {
  it('is taken back and done again, step by step', () => {
    const first = draft(station('0'), station('10'))
    const second = editedDraft(
      first,
      withStations(first, station('0'), station('5'), station('10')),
      'Insert',
    )
    const third = editedDraft(second, withStations(second, station('0'), station('6'), station('10')), 'Move')
    const back = undoneDraft(third)
    expect(ats(back)).toEqual(['0', '5', '10'])
    expect(ats(undoneDraft(back!))).toEqual(['0', '10'])
    expect(undoneDraft(undoneDraft(back!)!)).toBeUndefined()
    expect(ats(redoneDraft(back!))).toEqual(['0', '6', '10'])
    expect(redoneDraft(third)).toBeUndefined()
  })

  it('forgets what was taken back once something else is done', () => {
    const first = draft(station('0'), station('10'))
    const second = editedDraft(first, withStations(first, station('0'), station('12')), 'Longer')
    const other = editedDraft(
      undoneDraft(second)!,
      withStations(first, station('0'), station('8')),
      'Shorter',
    )
    expect(redoneDraft(other)).toBeUndefined()
    expect(ats(undoneDraft(other))).toEqual(['0', '10'])
  })

  it('takes back letters typed in one field together', () => {
    let typed = draft(station('0'), station('10'))
    for (const text of ['1', '1 ', '1 3', '1 3/', '1 3/4'])
      typed = editedDraft(
        typed,
        withStations(typed, station('0', text), station('10')),
        'Diameter',
        text !== '1',
      )
    expect(typed.history?.past).toHaveLength(1)
    expect(undoneDraft(typed)!.file.profile.stations[0]!.diameter).toBe('1')
    expect(redoneDraft(undoneDraft(typed)!)!.file.profile.stations[0]!.diameter).toBe('1 3/4')
  })

  it('leaves no step where nothing changed, nor where typing led back to the start', () => {
    const first = draft(station('0'), station('10'))
    expect(
      editedDraft(first, withStations(first, station('0'), station('10')), 'Nothing').history,
    ).toBeUndefined()
    const typed = editedDraft(first, withStations(first, station('0', '2'), station('10')), 'Diameter')
    const back = editedDraft(typed, withStations(first, station('0'), station('10')), 'Diameter', true)
    expect(undoneDraft(back)).toBeUndefined()
  })

  it('takes joints back with the stations they followed, and leaves other fields as they are', () => {
    const first: Draft = { file: { ...draft(station('0'), station('4')).file, joints: [mortise] } }
    const file = { ...withStations(first, station('0'), station('8')), joints: [{ ...mortise, at: '4' }] }
    const renamed = { ...editedDraft(first, file, 'Scale') }
    renamed.file = { ...renamed.file, name: 'Legs' }
    expect(undoneDraft(renamed)?.file).toEqual({ ...first.file, name: 'Legs' })
    const bare = editedDraft(first, draft(station('0'), station('4')).file, 'Delete joint 1')
    expect(bare.file).not.toHaveProperty('joints')
    expect(undoneDraft(bare)?.file.joints).toEqual([mortise])
  })

  it('keeps a bounded number of steps, the latest', () => {
    let long = draft(station('0'), station('10'))
    for (let i = 0; i < 300; i++)
      long = editedDraft(long, withStations(long, station('0'), station(String(11 + i))), `Move ${i}`)
    expect(long.history!.past.length).toBeLessThanOrEqual(200)
    expect(long.history!.past.at(-1)!.label).toBe('Move 299')
    expect(ats(undoneDraft(long))).toEqual(['0', '309'])
  })

  it('stores of two thousand stations only those that changed', () => {
    const many = draft(...Array.from({ length: 2000 }, (_, i) => station(String(i))))
    const moved = many.file.profile.stations.map((each, i) => (i === 1000 ? station('1000 1/2') : each))
    const edited = editedDraft(many, withStations(many, ...moved), 'Move')
    expect(JSON.stringify(edited.history).length).toBeLessThan(300)
  })
})

describe('historyInUnits', () => {
  it('keeps what lengths without a unit meant', () => {
    const first = draft(station('0'), station('10'))
    const edited = editedDraft(first, withStations(first, station('0'), station('12')), 'Longer')
    const history: History = historyInUnits(edited.history!, 'in', 'mm')
    expect(history.past[0]!.stations.out[0]!.at).toBe('10 in')
    expect(history.past[0]!.stations.into[0]!.at).toBe('12 in')
  })
})
