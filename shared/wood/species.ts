/** One wood as the handbook gives it. Specific gravities on volume at 12 % or green; shrinkage in % green to ovendry. */
export interface Species {
  /** Common name, lower case, other characters to `-`, e.g. `walnut-black`. */
  key: string
  name: string
  botanical?: string
  kind: 'hardwood' | 'softwood'
  sgGreen?: number
  sg12?: number
  /** Modulus of elasticity at 12 %, GPa. */
  moeGPa?: number
  /** Modulus of rupture at 12 %, MPa. */
  morMPa?: number
  /** Side hardness at 12 %, N. */
  hardnessN?: number
  shrinkRadialPct?: number
  shrinkTangentialPct?: number
  shrinkVolumetricPct?: number
  /** Dimensional change per 1 % moisture, radial and tangential, 6 to 14 %. */
  cr?: number
  ct?: number
  source: string
  /** How sure the row is as a whole; `fieldConfidence` says it value by value. */
  confidence: 'cross' | 'read' | 'computed' | 'memory' | 'shop'
  fieldConfidence?: string
  /** Every value but volumetric shrinkage stands on print: offered by default. */
  safe: boolean
  notes?: string
}
