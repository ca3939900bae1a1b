import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planText } from '../../../../server/cli/text/plan.ts'
import { stairLines } from '../../../../server/cli/text/stair.ts'
import { readJob } from '../../../../shared/job.ts'
import { planJob } from '../../../../shared/plan.ts'
import { defaultShop } from '../../../../shared/shop.ts'
import { dowel } from '../../../jobs.ts'

const woods = JSON.parse(readFileSync(new URL('../../../../seed/species.json', import.meta.url), 'utf8'))
const planOf = (more: object) => planJob(readJob({ ...dowel(), ...more }), defaultShop, woods)
const oneLine = (lines: string[]): string => lines.join(' ').replace(/\s+/g, ' ')

describe('the stair figures of a plan in text', () => {
  const plan = planOf({ use: 'guard', quantity: 10, stair: { run: 1200 } })

  it('give spacing, count and bending, each with its unit', () => {
    // 30 mm parts, a 4 in ball: 9 leave 93 mm, and stand 123 mm centre to centre
    const text = oneLine(stairLines(plan, 'mm'))
    expect(text).toContain('at most 131.5 mm, so that a ball of 101.6 mm does not pass')
    expect(text).toContain(
      '1200.0 mm takes 9 parts, 123.0 mm centre to centre, the first 108.0 mm from the post',
    )
    expect(text).toMatch(/222 N over 304\.8 mm, all on one part: [\d.]+ MPa .* a reserve of [\d.]+/)
  })

  it('stand beside who decides, which is said once', () => {
    const text = oneLine(planText(plan, { style: 'mm' }).split('\n'))
    expect(text).toContain('IN A GUARD')
    expect(text.match(/The local code and whoever inspects by it/g)).toHaveLength(1)
  })

  it('are left out of other work, and what was set aside is told among the cautions', () => {
    expect(stairLines(planOf({}), 'mm')).toEqual([])
    const text = oneLine(planText(planOf({ stair: { run: 1200 } }), { style: 'mm' }).split('\n'))
    expect(text).not.toContain('IN A GUARD')
    expect(text).toContain('stair: What is said of the stair is left aside')
  })
})
