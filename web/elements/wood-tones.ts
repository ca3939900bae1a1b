/**
 * Colours of planed, oiled heartwood, by the species key or the beginning of it.
 * Common practice, no source: tones chosen by eye to tell woods apart on a screen, never to judge a board by.
 */
const tones: Record<string, string> = {
  alder: '#c48e60',
  apple: '#b5764f',
  ash: '#d8bc8e',
  'ash-black': '#b89468',
  aspen: '#e5d6b5',
  baldcypress: '#cfa265',
  basswood: '#e4d0a8',
  beech: '#d0a478',
  birch: '#dabe92',
  'birch-sweet': '#c08c60',
  buckeye: '#e8d8b4',
  butternut: '#b88b5b',
  catalpa: '#bca276',
  cedar: '#bd7c50',
  'cedar-atlantic-white': '#d9b78c',
  'cedar-eastern-redcedar': '#a85240',
  'cedar-northern-white': '#d6b58a',
  'cedar-port-orford': '#dfc592',
  'cedar-yellow': '#ddc382',
  cherry: '#a9683f',
  chestnut: '#b48a5a',
  cottonwood: '#dcc9a0',
  'douglas-fir': '#cd9460',
  elm: '#b4885e',
  fir: '#e0c79d',
  hackberry: '#d4ba82',
  hemlock: '#d7b78c',
  hickory: '#c2986a',
  honeylocust: '#bf7f4d',
  larch: '#bf8856',
  'locust-black': '#b39546',
  magnolia: '#cbba88',
  mahogany: '#8f4a30',
  maple: '#dfc398',
  'maple-red': '#d6b388',
  'maple-silver': '#dcbf96',
  oak: '#c69a6a',
  'oak-white': '#bf9f70',
  'oak-live': '#a98a60',
  pecan: '#bd8c62',
  persimmon: '#a88663',
  pine: '#dab479',
  'pine-eastern-white': '#e1c593',
  'pine-sugar': '#e3ca9c',
  redwood: '#9b4f38',
  sassafras: '#b38c55',
  spruce: '#e5d0a7',
  sweetgum: '#af7953',
  sycamore: '#cda37a',
  tamarack: '#c4915b',
  tanoak: '#bb8a60',
  tupelo: '#c9b087',
  'walnut-black': '#70492f',
  willow: '#ae8059',
  'yellow-poplar': '#c6bd8a',
}

const PLAIN_WOOD = '#c79f6e'

/**
 * The tone of a wood, `#rrggbb`: by its whole key, else by the longest beginning of it that is listed, else a
 * plain wood.
 */
export function woodTone(speciesKey: string): string {
  const parts = speciesKey.split('-')
  for (let n = parts.length; n > 0; n--) {
    const tone = tones[parts.slice(0, n).join('-')]
    if (tone) return tone
  }
  return PLAIN_WOOD
}

const channels = (hex: string): number[] => [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16))

/** A tone lit by `light`: 1 is the tone itself, below it falls towards its own shadow, above it pales. */
export function litTone(hex: string, light: number): string {
  const lit = channels(hex).map((c, i) => {
    // Shadows of wood stay warm: blue falls off first.
    const shaded =
      light < 1 ? c * Math.max(0, light) ** [0.92, 1, 1.1][i]! : c + (255 - c) * Math.min(1, light - 1)
    return Math.round(Math.min(255, shaded))
  })
  return `#${lit.map((c) => c.toString(16).padStart(2, '0')).join('')}`
}
