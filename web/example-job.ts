import type { JobFile } from './job-file.ts'

/** An invented job to look at: legs with a square top, a mortise in it, and most of the shapes there are. */
export const exampleJob = (): JobFile => ({
  name: 'Footstool legs (example)',
  units: 'in',
  species: 'maple-sugar',
  quantity: 4,
  profile: {
    stations: [
      { at: '0', diameter: '7/8', then: 'ovolo', name: 'foot' },
      { at: '1/2', diameter: '1 1/8', then: 'straight' },
      { at: '1', diameter: '1 1/8', then: 'bead', rise: '3/16', name: 'foot bead' },
      { at: '1 1/2', diameter: '1', then: 'curve', check: true, name: 'ankle' },
      { at: '4 1/2', diameter: '1 5/8', then: 'curve', check: true, name: 'belly' },
      { at: '7', diameter: '1 1/16', then: 'cove', depth: '1/8', name: 'neck' },
      { at: '7 3/4', diameter: '1 1/4', then: 'straight', name: 'fillet' },
      { at: '8', diameter: '1 1/2', then: 'square', side: '1 3/4', shoulder: 'rounded', name: 'pommel' },
      { at: '11' },
    ],
  },
  joints: [{ kind: 'mortise', at: '9 3/4', face: 'A', size: ['3/8', '1 1/2'], depth: '7/8' }],
})
