import { describe, expect, it, vi } from 'vitest'
import { Refusal } from '../../web/api.ts'
import { lastSeen } from '../../web/last-seen.ts'
import { Outbox } from '../../web/outbox.ts'

const away = () => Promise.reject(new Refusal(0, 'away'))

describe('lastSeen', () => {
  it('gives the last answer while the server cannot be reached', async () => {
    expect(await lastSeen('rack', async () => 7)).toEqual({ value: 7, now: true })
    expect(await lastSeen('rack', away)).toEqual({ value: 7, now: false })
    expect(await lastSeen('rack', async () => 8)).toEqual({ value: 8, now: true })
  })

  it.each([
    ['a busy server', new Refusal(429, 'too many asked')],
    ['a failure of the server', new Refusal(503, 'no room')],
    ['an answer that cannot be read', new SyntaxError('unexpected <')],
  ])('gives it over %s too, which the outbox waits for as well', async (_, failure) => {
    await lastSeen('rack', async () => 9)
    expect(await lastSeen('rack', () => Promise.reject(failure))).toEqual({ value: 9, now: false })
    const [shelf, later] = [new Map<string, string>(), vi.fn()]
    const box = new Outbox({
      shelf: {
        getItem: (key) => shelf.get(key) ?? null,
        setItem: (key, kept) => void shelf.set(key, kept),
      },
      deliver: () => Promise.reject(failure),
      later,
    })
    const sending = {
      kind: 'board' as const,
      body: { key: 'b', width: 150, length: 2400, thickness: 50, count: 1 },
    }
    expect(await box.send(sending)).toMatchObject({ state: 'waiting' })
    expect(later).toHaveBeenCalledOnce()
  })

  it('tells that the server is away when nothing was seen before', async () => {
    await expect(lastSeen('never seen', away)).rejects.toThrow('away')
  })

  it('hides no refusal behind an old answer', async () => {
    await lastSeen('gone', async () => 1)
    await expect(lastSeen('gone', () => Promise.reject(new Refusal(404, 'no such job')))).rejects.toThrow(
      'no such job',
    )
  })
})
