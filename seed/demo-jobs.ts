/** Four legs left square at the top for the rails; a horn stands over the mortises until glue-up. */
export const legs = {
  name: 'Lantern table legs',
  customer: 'Harrow Lane tea room',
  units: 'in',
  species: 'cherry-black',
  quantity: 4,
  match: true,
  finish: 'oil',
  profile: {
    stations: [
      { at: '0', diameter: '7/8', then: 'straight', name: 'foot', key: 'foot', check: true },
      { at: '1 1/4', diameter: '1', then: 'bead', rise: '1/8', name: 'foot bead' },
      { at: '1 3/4', diameter: '1', then: 'straight' },
      { at: '2 1/4', diameter: '1', then: 'straight', name: 'ankle', key: 'ankle', check: true },
      { at: '14', diameter: '1 5/8', then: 'ogee', name: 'taper top', key: 'taper', check: true },
      { at: '17 1/2', diameter: '1 1/4', then: 'cove', depth: '1/8', name: 'neck' },
      { at: '18 1/2', diameter: '1 1/2', then: 'straight' },
      { at: '18 3/4', diameter: '1 1/2', then: 'bead', rise: '3/16', name: 'collar' },
      { at: '19 1/2', diameter: '1 1/2', then: 'straight' },
      { at: '19 3/4', diameter: '1 1/2', then: 'straight', name: 'fillet', key: 'fillet', check: true },
      { at: '20', diameter: '1 1/2', then: 'square', side: '2', shoulder: 'rounded', name: 'pommel' },
      { at: '27 3/4', trimLater: true },
    ],
  },
  joints: [
    { kind: 'mortise', at: '25 1/2', face: 'A', size: ['3/8', '3 1/2'], depth: '7/8' },
    { kind: 'mortise', at: '25 1/2', face: 'B', size: ['3/8', '3 1/2'], depth: '7/8' },
  ],
  notes: 'Horns stay on until the frames are glued up.',
}

/** Slender work: the rest follows the cut. */
export const balusters = {
  name: 'Gallery balusters',
  customer: 'Penstock Mill library',
  units: 'in',
  species: 'maple-sugar',
  quantity: 36,
  match: true,
  finish: 'oil',
  use: 'stair',
  stair: { run: '15 ft 4 in' },
  mount: 'spur',
  profile: {
    stations: [
      {
        at: '0',
        diameter: '5/8',
        tenon: true,
        fixed: true,
        check: true,
        key: 'tenon',
        name: 'foot tenon',
        plus: '1/128',
        minus: '1/64',
      },
      { at: '3/4', diameter: '5/8' },
      { at: '3/4', diameter: '1 1/8', then: 'straight', name: 'base' },
      { at: '4', diameter: '1 1/8', then: 'cove', depth: '1/8' },
      { at: '5', diameter: '1', then: 'straight' },
      { at: '5 1/4', diameter: '1', then: 'curve', name: 'vase' },
      { at: '9', diameter: '1 1/4', then: 'curve', key: 'belly', name: 'belly', check: true },
      { at: '20', diameter: '7/8', then: 'curve', key: 'waist', name: 'waist', check: true },
      { at: '29', diameter: '11/16', then: 'straight', key: 'neck', name: 'neck', check: true },
      { at: '30', diameter: '11/16', then: 'bead', rise: '1/8', name: 'collar' },
      { at: '30 1/2', diameter: '11/16', then: 'straight' },
      { at: '33 1/4', diameter: '3/4' },
      { at: '33 1/4', diameter: '5/8', tenon: true, name: 'top tenon' },
      { at: '34', diameter: '5/8' },
    ],
  },
  tolerance: { diameter: '1/32' },
}

/** Small faces in metric, several from one stick. */
export const knobs = {
  name: 'Apothecary drawer knobs',
  customer: 'Sorrel & Finch cabinet makers',
  units: 'mm',
  species: 'walnut-black',
  quantity: 24,
  match: true,
  mount: 'chuck',
  perBlank: 'auto',
  finish: 'polish',
  profile: {
    stations: [
      { at: 0, diameter: 16, then: 'straight', name: 'seat', key: 'seat', check: true, fixed: true },
      { at: 4, diameter: 16, then: 'cove', depth: 2, name: 'stem' },
      { at: 12, diameter: 20, then: 'ogee' },
      { at: 18, diameter: 34, then: 'straight', name: 'rim', key: 'rim', check: true },
      { at: 22, diameter: 34, then: 'ovolo', name: 'face' },
      { at: 29, diameter: 14, then: 'straight' },
      { at: 30, diameter: 13 },
    ],
  },
  tolerance: { diameter: 0.5, position: 1, length: 0.8 },
}

/**
 * Left and right hands: the side rail comes in on one face and the front rail on the other. The board
 * on hand is not enough for six settles.
 */
export const posts = {
  name: 'Settle arm posts',
  customer: 'Quarry Bank reading room',
  units: 'in',
  species: 'ash-white',
  quantity: 12,
  mirrored: true,
  match: true,
  finish: 'oil',
  profile: {
    stations: [
      { at: '0', diameter: '1 1/8', then: 'straight', name: 'foot', key: 'foot', check: true },
      { at: '5', diameter: '1 1/2', then: 'square', side: '1 3/4', shoulder: 'rounded', name: 'seat block' },
      { at: '9', diameter: '1 1/2', then: 'cove', depth: '1/8' },
      { at: '9 3/4', diameter: '1 3/8', then: 'bead', rise: '1/8', name: 'ring' },
      { at: '10 1/4', diameter: '1 3/8', then: 'straight' },
      { at: '15', diameter: '1 1/8', then: 'straight', name: 'waist', key: 'waist', check: true },
      { at: '18', diameter: '1 3/8', then: 'straight', name: 'arm shoulder' },
      { at: '18', diameter: '3/4', tenon: true, fixed: true, name: 'arm tenon' },
      { at: '19', diameter: '3/4', key: 'tenon', check: true },
    ],
  },
  joints: [
    { kind: 'mortise', at: '7 1/2', face: 'A', size: ['3/8', '1 3/4'], depth: '3/4' },
    { kind: 'mortise', at: '6 1/2', face: 'B', size: ['3/8', '1 3/4'], depth: '3/4' },
  ],
}
