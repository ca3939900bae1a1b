import { describe, expect, it } from 'vitest'
import { Refusal } from '../../web/api.ts'
import { Load } from '../../web/load.ts'

const host = {
  addController() {},
  removeController() {},
  requestUpdate() {},
  updateComplete: Promise.resolve(true),
}

/** A question whose answer is given by hand. */
function question() {
  let answer!: (text: string) => void
  let refuse!: (failure: Error) => void
  const asked = new Promise<string>((resolve, reject) => {
    answer = resolve
    refuse = reject
  })
  return { ask: () => asked, answer, refuse }
}

describe('something being fetched', () => {
  it('comes to what was fetched, and to nothing where a later question overtook it', async () => {
    const load = new Load<string>(host)
    const [first, second] = [question(), question()]
    const [slow, quick] = [load.from(first.ask), load.from(second.ask)]
    second.answer('now')
    expect(await quick).toBe('now')
    first.answer('before')
    expect(await slow).toBeUndefined()
    expect(load.value).toBe('now')
  })

  it('comes to nothing where it is refused, what was there stays', async () => {
    const load = new Load<string>(host)
    await load.from(async () => 'there')
    const asked = question()
    const answer = load.from(asked.ask)
    asked.refuse(new Error('no'))
    expect(await answer).toBeUndefined()
    expect(load.value).toBe('there')
    expect(load.failure?.message).toBe('no')
  })

  it('is missing where nothing of that name was there, not where it could not be fetched or was there before', async () => {
    const refusing = async (load: Load<string>, failure: Error) => {
      await load.from(() => Promise.reject(failure))
      return load.isMissing
    }
    expect(await refusing(new Load<string>(host), new Refusal(404, 'no'))).toBe(true)
    expect(await refusing(new Load<string>(host), new Refusal(503, 'no'))).toBe(false)
    const load = new Load<string>(host)
    await load.from(async () => 'there')
    expect(await refusing(load, new Refusal(404, 'no'))).toBe(false)
  })
})
