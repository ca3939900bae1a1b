/**
 * Moisture content (%) that wood settles to in air of that temperature (°C) and relative humidity (a fraction,
 * 0 to 1). Wood Handbook FPL-GTR-282 eq. 4-5; table 4-2 lists −1 to 132 °C.
 */
export function emcPct(tempC: number, humidity: number): number {
  const w = 349 + 1.29 * tempC + 0.0135 * tempC ** 2
  const k = 0.805 + 0.000736 * tempC - 0.00000273 * tempC ** 2
  const k1 = 6.27 - 0.00938 * tempC - 0.000303 * tempC ** 2
  const k2 = 1.91 + 0.0407 * tempC - 0.000293 * tempC ** 2
  const kh = k * humidity
  const layers = k1 * kh + 2 * k1 * k2 * kh ** 2
  return (1800 / w) * (kh / (1 - kh) + layers / (1 + k1 * kh + k1 * k2 * kh ** 2))
}
