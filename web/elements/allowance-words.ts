import type { Allowances } from '../../shared/blank/allowances.ts'

/** What each allowance is called on screen, in the order wood meets them. */
export const allowanceWords: Record<keyof Allowances, string> = {
  rounding: 'On the diameter, to true up the square',
  sideStep: 'Side rounded up to whole',
  planingThin: 'Planing, stock to 6/4',
  planingThick: 'Planing, stock from 8/4',
  bowPerMm: 'Bow per foot of length',
  bowFree: 'No bow counted up to',
  endWaste: 'Waste at a turned end',
  spur: 'Taken by a spur drive',
  chuck: 'Taken by a chuck tenon',
  cup: 'Taken by a cup drive',
  screw: 'Taken by a screw chuck',
  jam: 'Taken by a jam chuck',
  horn: 'Horn at a jointed square end',
  hornReach: 'Joint this near an end asks for a horn',
  between: 'Between parts on one stick',
  stickMax: 'Longest stick of several parts',
  minMachine: 'Shortest through jointer and planer',
  jointing: 'Jointing of a layer before glue-up',
  sizing: 'Left on the diameter after sizing',
  turned: 'Left on the diameter for sanding',
  film: 'Gained on the diameter by a film finish',
  practice: 'Practice blanks in cheap wood',
}
