import { describe, expect, it } from 'vitest'
import { Refusal } from '../../web/api.ts'
import { Outbox } from '../../web/outbox.ts'
import { Purchase } from '../../web/yard-purchase.ts'
import { storageBench } from './yard-bench.ts'

const boards = [1, 2].map((n) => ({ key: `b-${n}`, width: 150, length: 2400, thickness: 52, count: 1 }))

/** A device and a server that can be unplugged; a board is stored once for its key. */
function bench({ full }: { full: boolean }) {
  const { storage, state } = storageBench()
  state.full = full
  const server = { away: true, stored: new Set<string>() }
  const box = new Outbox({
    shelf: storage,
    deliver: async ({ body }) => {
      if (server.away) throw new Refusal(0, 'The server cannot be reached.')
      server.stored.add(body.key)
      return body as never
    },
    later: () => {},
  })
  return { box, server }
}

describe('boards that are bought', () => {
  it('are safe at once where the device keeps them until the server is in reach', () => {
    const { box } = bench({ full: false })
    expect(new Purchase(box, boards).isSafe).toBe(true)
  })

  it('are not safe on a full device before the server has every one of them', async () => {
    const { box, server } = bench({ full: true })
    const bought = new Purchase(box, boards)
    await box.flush()
    expect(bought.isSafe).toBe(false)
    server.away = false
    await box.flush()
    expect([bought.isSafe, [...server.stored]]).toEqual([true, ['b-1', 'b-2']])
  })

  it('are stored once when they are sent again', async () => {
    const { box, server } = bench({ full: true })
    const first = new Purchase(box, boards)
    const second = new Purchase(box, boards)
    server.away = false
    await box.flush()
    expect([first.isSafe, second.isSafe, server.stored.size]).toEqual([true, true, 2])
    expect(box.waiting()).toEqual([])
  })
})
