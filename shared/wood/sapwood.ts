import { speciesKey } from './species.ts'

/**
 * Woods bought for a heartwood that their pale sapwood stands out against, by the first word of their key. All others
 * are pale throughout, or wanted for their sapwood as maple, ash and birch are. From memory.
 */
const darkHearted = new Set([
  'walnut',
  'butternut',
  'cherry',
  'oak',
  'chestnut',
  'locust',
  'honeylocust',
  'catalpa',
  'sassafras',
  'tanoak',
  'redwood',
  'cedar',
  'baldcypress',
  'douglas',
  'larch',
  'tamarack',
  'mahogany',
  'spanish',
  'sapele',
  'teak',
  'iroko',
  'jarrah',
  'lignumvitae',
  'opepe',
  'ovangkol',
  'purpleheart',
  'rosewood',
  'meranti',
])

/**
 * Whether sapwood is taken where nobody says: not in woods whose heartwood it stands out against.
 *
 * @example usualSap('walnut-black') // 'none'
 * @example usualSap('Maple, sugar') // 'allowed'
 */
export const usualSap = (species: string): 'none' | 'allowed' =>
  darkHearted.has(speciesKey(species).split('-')[0]!) ? 'none' : 'allowed'
