import { describe, expect, it } from 'vitest'
import { patternSvg } from '../../../server/prints/index.ts'
import { balusterPlan, crowdedPlan, knobPlan } from './plans.ts'

/** Points of the path that is cut along the profile. */
function profilePoints(svg: string): [number, number][] {
  const path = /<path class="profile" d="([^"]+)"/.exec(svg)![1]!
  return [...path.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => [Number(x), Number(y)])
}

describe('the pattern for a cutter', () => {
  it('is 1:1: its size in mm is its view box', () => {
    const svg = patternSvg(balusterPlan())
    const [, width, height, viewWidth, viewHeight] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!
    expect([viewWidth, viewHeight]).toEqual([width, height])
    expect(Number(width)).toBeGreaterThan(762)
  })

  it('cuts the half profile at its true length and radius', () => {
    const points = profilePoints(patternSvg(balusterPlan()))
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(762, 3)
    // The largest radius is half the square of 1-3/4 in.
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(0.875 * 25.4, 3)
  })

  it('keeps to the bead’s circle within 0.01 mm', () => {
    // Knob: bead of rise 3 over 21 mm on the line from radius 12 to 15; chord and sagitta give the circle.
    const points = profilePoints(patternSvg(knobPlan()))
    const [x0, axis] = points[0]!
    const arc = (x: number) => {
      const radius = (10.5 ** 2 + 3 ** 2) / 6
      return 12 + ((x - 21) / 21) * 3 + 3 - radius + Math.sqrt(radius ** 2 - (x - 31.5) ** 2)
    }
    const onBead = points
      .map(([x, y]) => [x - x0, axis - y] as const)
      .filter(([x, r]) => x > 21.01 && x < 41.99 && r > 0)
    expect(onBead.length).toBeGreaterThan(10)
    for (const [x, r] of onBead) expect(Math.abs(r - arc(x))).toBeLessThanOrEqual(0.01)
    onBead.slice(1).forEach(([x, r], i) => {
      const [a, b] = [onBead[i]!, [x, r] as const]
      expect(Math.abs((a[1] + b[1]) / 2 - arc((a[0] + b[0]) / 2))).toBeLessThanOrEqual(0.01)
    })
  })

  it('keeps what is cut apart from what is engraved', () => {
    const svg = patternSvg(balusterPlan())
    const cut = /<g class="cut"[^>]*>([\s\S]*?)<\/g>/.exec(svg)![1]!
    const engraved = /<g class="engraved"[^>]*>([\s\S]*?)<\/g>/.exec(svg)![1]!
    expect(cut).not.toContain('<text')
    expect(cut).not.toContain('<line')
    expect(engraved).not.toContain('<path')
    // Eleven places, each with its line and the one that leads to its figures.
    expect(engraved.match(/<line /g)).toHaveLength(22)
    expect(engraved).toContain('>5-1/2 in, ⌀ 1-1/2 in | ⌀ 1 in, neck<')
    expect(patternSvg(knobPlan())).toContain('>15.0 mm, ⌀ 18.0 mm | ⌀ 24.0 mm<')
  })

  it('writes lengths in the style asked for', () => {
    expect(patternSvg(balusterPlan(), 'mm')).toContain('>139.7 mm, ⌀ 38.1 mm | ⌀ 25.4 mm, neck<')
    expect(patternSvg(balusterPlan(), 'decimal')).toContain('>5.5 in, ⌀ 1.5 in | ⌀ 1 in, neck<')
  })

  it('is sound XML whatever the names hold', () => {
    const names = ['A <b> & "c"', 'half \ud800 a pair', '\u0000\u0007 bell', ']]> end', '‘’ ½ ⌀']
    for (const name of names) {
      const svg = patternSvg({ ...crowdedPlan(), job: { ...crowdedPlan().job, name } })
      // XML 1.0: Char (2.2), references (4.1), tags that close each other (3).
      expect(svg).toMatch(/^[\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]*$/u)
      expect(svg.replace(/&#\d+;/g, '')).not.toContain('&')
      const open: string[] = []
      for (const [, close, tag, empty] of svg.matchAll(/<(\/?)(\w+)(?:\s+[\w:-]+="[^"<]*")*\s*(\/?)>/g)) {
        if (close) expect(open.pop()).toBe(tag)
        else if (!empty) open.push(tag!)
      }
      expect(open).toEqual([])
      expect(
        svg.replace(/<\?xml[^>]*\?>/, '').replace(/<\/?\w+(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g, ''),
      ).not.toMatch(/[<>]/)
    }
  })

  it('never writes two figures over each other', () => {
    const places = [...patternSvg(crowdedPlan()).matchAll(/<text transform="translate\(([\d.]+) /g)].map(
      ([, x]) => Number(x),
    )
    // Type of 4 mm needs more than 4 mm from one to the next.
    places.slice(1).forEach((place, i) => {
      expect(place - places[i]!).toBeGreaterThan(4.5)
    })
    expect(places.length).toBeGreaterThan(45)
  })

  it('comes out the same each time', () => {
    expect(patternSvg(balusterPlan())).toBe(patternSvg(balusterPlan()))
  })
})
