import { describe, expect, it } from 'vitest'
import { Refusal } from '../../web/api.ts'
import { Outbox, type OutboxParts, type Sending } from '../../web/outbox.ts'

const reading = (key: string): Sending => ({
  kind: 'reading',
  job: 'job-1',
  body: { key, piece: 'job-1-1', station: 's1', value: 40, at: '2026-03-02T10:00:00Z' },
})

/** A server that can be unplugged, and a shelf that outlives the page. */
function bench() {
  const kept = new Map<string, string>()
  const state = {
    away: false,
    refuses: new Set<string>(),
    stored: [] as string[],
    again: [] as (() => void)[],
  }
  const parts: OutboxParts = {
    shelf: { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) },
    deliver: async (sending) => {
      if (state.away) throw new Refusal(0, 'The server cannot be reached.')
      if (state.refuses.has(sending.body.key)) throw new Refusal(422, 'station: is not known')
      state.stored.push(sending.body.key)
      return sending.body as never
    },
    later: (_, again) => void state.again.push(again),
  }
  return { kept, state, parts }
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

describe('the outbox', () => {
  it('keeps nothing once the server has stored it', async () => {
    const { parts, state } = bench()
    const box = new Outbox(parts)
    expect((await box.send(reading('a'))).state).toBe('stored')
    expect(state.stored).toEqual(['a'])
    expect(box.waiting()).toEqual([])
  })

  it('keeps a reading while the server is away and sends it in order when it is back', async () => {
    const { parts, state } = bench()
    const box = new Outbox(parts)
    state.away = true
    expect((await box.send(reading('a'))).state).toBe('waiting')
    expect((await box.send(reading('b'))).state).toBe('waiting')
    expect(box.waiting('job-1').map(({ sending }) => sending.body.key)).toEqual(['a', 'b'])
    state.away = false
    for (const again of state.again) again()
    await settled()
    expect(state.stored).toEqual(['a', 'b'])
    expect(box.waiting()).toEqual([])
  })

  it('keeps boards bought at the yard beside what is logged, and counts them to no job', async () => {
    const { parts, state } = bench()
    const box = new Outbox(parts)
    state.away = true
    const body = { key: 'oak-1', width: 185, length: 2400, thickness: 52, count: 1 }
    await Promise.all([box.send(reading('a')), box.send({ kind: 'board', body })])
    expect(box.waiting('job-1').map(({ sending }) => sending.body.key)).toEqual(['a'])
    expect(box.waiting().map(({ sending }) => sending.kind)).toEqual(['reading', 'board'])
    state.away = false
    await box.flush()
    expect(state.stored).toEqual(['a', 'oak-1'])
  })

  it('finds what waits again after the page was closed', async () => {
    const { parts, state } = bench()
    state.away = true
    await new Outbox(parts).send(reading('a'))
    state.away = false
    const reopened = new Outbox(parts)
    expect(reopened.waiting()).toHaveLength(1)
    await reopened.flush()
    expect(state.stored).toEqual(['a'])
  })

  it('keeps what the server refuses, with the reason, and sends the rest', async () => {
    const { parts, state } = bench()
    state.refuses.add('a')
    const box = new Outbox(parts)
    expect(await box.send(reading('a'))).toEqual({ state: 'refused', why: 'station: is not known' })
    expect((await box.send(reading('b'))).state).toBe('stored')
    expect(box.waiting()).toMatchObject([{ refused: 'station: is not known' }])
    box.drop('a')
    expect(box.waiting()).toEqual([])
  })

  it('holds on to a sending for the life of the page when the device has no room', async () => {
    const { parts, state } = bench()
    parts.shelf.setItem = () => {
      throw new Error('no room')
    }
    const box = new Outbox(parts)
    state.away = true
    await box.send(reading('a'))
    expect(box.keeps).toBe(false)
    expect(box.waiting()).toHaveLength(1)
    state.away = false
    await box.flush()
    expect(state.stored).toEqual(['a'])
    expect(box.waiting()).toEqual([])
  })

  it('tells those who watch it of every change', async () => {
    const { parts } = bench()
    const box = new Outbox(parts)
    let told = 0
    const stop = box.watch(() => {
      told++
    })
    await box.send(reading('a'))
    stop()
    await box.send(reading('b'))
    expect(told).toBe(2)
  })
})
