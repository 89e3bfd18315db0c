/** FAO Penman-Monteith as FAO-56 (1998) prints it: equations 6, 7, 8, 11 to 13, 17, 21, 23 to 25, 34, 37 to 40. */
export function referenceET(
  day: number,
  latitude: number,
  z: number,
  air: readonly number[],
  rh: readonly number[],
  solar: number,
  wind: number,
): number {
  const [high, low] = [Math.max(...air), Math.min(...air)]
  const es = (t: number) => 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
  const t = (high + low) / 2
  const slope = (4098 * es(t)) / (t + 237.3) ** 2
  const gamma = 0.000665 * 101.3 * ((293 - 0.0065 * z) / 293) ** 5.26
  const ea = (es(low) * Math.max(...rh) + es(high) * Math.min(...rh)) / 200
  const phi = (Math.PI * latitude) / 180
  const declination = 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39)
  const distance = 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365)
  const sunset = Math.acos(-Math.tan(phi) * Math.tan(declination))
  const ra =
    ((24 * 60) / Math.PI) *
    0.082 *
    distance *
    (sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset))
  const clear = (0.75 + 2e-5 * z) * ra
  const longwave =
    4.903e-9 *
    (((high + 273.16) ** 4 + (low + 273.16) ** 4) / 2) *
    (0.34 - 0.14 * Math.sqrt(ea)) *
    (1.35 * Math.min(1, solar / clear) - 0.35)
  const net = 0.77 * solar - longwave
  const deficit = (es(high) + es(low)) / 2 - ea
  return (0.408 * slope * net + gamma * (900 / (t + 273)) * wind * deficit) / (slope + gamma * (1 + 0.34 * wind))
}
