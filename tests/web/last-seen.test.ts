import { describe, expect, it } from 'vitest'
import { Refusal } from '../../web/api.ts'
import { lastSeen } from '../../web/last-seen.ts'

const away = () => Promise.reject(new Refusal(0, 'away'))

describe('lastSeen', () => {
  it('gives the last answer while the server cannot be reached', async () => {
    expect(await lastSeen('rack', async () => 7)).toEqual({ value: 7, now: true })
    expect(await lastSeen('rack', away)).toEqual({ value: 7, now: false })
    expect(await lastSeen('rack', async () => 8)).toEqual({ value: 8, now: true })
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
