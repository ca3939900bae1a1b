import { inches, nm } from '../units/length.ts'
import type { Span } from './profile.ts'

/** Straight lengths under this are fillets, cut with the parting tool tipped for a shearing cut, mm. Common practice, no source. */
export const FILLET = inches(1 / 4)

/** Whether a span is a narrow flat band. */
export const isFillet = ({ shape, from, to, d0, d1, station }: Span): boolean =>
  shape === 'straight' && station.tenon !== true && nm(d0) === nm(d1) && nm(to - from) < nm(FILLET)
