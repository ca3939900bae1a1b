import { describe, expect, it } from 'vitest'
import { contextOf } from '../../../shared/route/context.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import * as choice from '../../../shared/route/tool-choice.ts'
import { inches } from '../../../shared/units/length.ts'
import { leg, routeInput } from './route-inputs.ts'

const shop = (tools?: RouteInput['tools']) => contextOf(routeInput(leg(), tools && { tools }))

describe('the tool for a cut', () => {
  it('is the widest skew that can swing in the bead', () => {
    expect(choice.beadTool(shop(), inches(3 / 8)).tool).toBe('small skew')
    expect(choice.beadTool(shop(), inches(1.5)).tool).toBe('big skew')
  })

  it('is the parting tool for a bead narrower than any skew or gouge', () => {
    expect(choice.beadTool(shop(), inches(3 / 16))).toMatchObject({ tool: 'parting tool', cut: 'parting' })
  })

  it('says so when no tool of the shop is narrow enough', () => {
    const narrow = choice.beadTool(shop(), inches(1 / 16))
    expect(narrow.caution).toContain('1/16 in')
    expect(choice.coveTool(shop(), inches(1 / 8), inches(1 / 16)).caution).toContain('1/8 in')
  })

  it('is a gouge whose nose turns inside the cove', () => {
    expect(choice.coveTool(shop(), inches(1 / 4), inches(1 / 8)).tool).toBe('small gouge')
    expect(choice.coveTool(shop(), inches(3 / 4), inches(3 / 8)).tool).toBe('middle gouge')
    // As wide, but so tight a radius that the middle gouge would dig in at both sides.
    expect(choice.coveTool(shop(), inches(3 / 4), inches(3 / 16)).tool).toBe('small gouge')
  })

  it('is the parting tool for a fillet and the big skew for a long cylinder', () => {
    expect(choice.straightTool(shop(), inches(1 / 8)).tool).toBe('parting tool')
    expect(choice.straightTool(shop(), inches(6)).tool).toBe('big skew')
  })

  it('scrapes, with a caution, where the shop has nothing that slices', () => {
    const scraper = { name: 'scraper', kind: 'scraper', width: inches(1 / 4), steel: 'hss' } as const
    const cove = choice.coveTool(shop([scraper]), inches(1), inches(1 / 2))
    expect(cove).toMatchObject({ tool: 'scraper', cut: 'scraping' })
    expect(cove.caution).toContain('scraped')
  })

  it('is the usual one, with a caution, where the shop has listed none', () => {
    for (const of of [choice.roughingTool, choice.partingTool, choice.facingTool]) {
      const { tool, caution } = of(shop([]))
      expect(caution).toContain(tool)
    }
  })
})
