/** WMO guide No. 8 (CIMO), Annex 4.B, over water, without the pressure term: a and b in C. */
const magnusA = 17.62
const magnusB = 243.12

/**
 * Dew point in C of air at `temperatureC` and `relativeHumidityPercent` (over 0, at most 100), by the Magnus formula. Agrees with
 * printed whole-degree tables between 0 and 50 C to half a degree.
 */
export function dewPoint(temperatureC: number, relativeHumidityPercent: number): number {
  const gamma = Math.log(relativeHumidityPercent / 100) + (magnusA * temperatureC) / (magnusB + temperatureC)
  return (magnusB * gamma) / (magnusA - gamma)
}

/**
 * Inside surface temperature in C of a wall or ceiling: Tsi = Ti - U x Rsi x (Ti - Te), U (W/m2K) including the inside
 * film Rsi (m2K/W; ISO 6946: 0.13 walls, 0.10 ceilings). Elementary steady heat flow.
 */
export function surfaceTemperature(
  insideC: number,
  behindC: number,
  transmittance: number,
  insideFilm: number,
): number {
  return insideC - transmittance * insideFilm * (insideC - behindC)
}

/**
 * How much longer (or shorter) drying takes than on the label, given for about 20 C: 2^((20 - T)/10), held between a half and four.
 * A soft default: the doubling is stated for chemically curing coatings and is no law for latex.
 */
export function temperatureFactor(temperatureC: number): number {
  return Math.min(4, Math.max(0.5, 2 ** ((20 - temperatureC) / 10)))
}

/** Water leaves slowly into damp air; steps are a shop assumption (over 90 % some paint never dries). */
export function humidityFactor(
  relativeHumidityPercent: number,
  numbers: {
    readonly dampFrom: number
    readonly dampFactor: number
    readonly wetFrom: number
    readonly wetFactor: number
  },
): number {
  if (relativeHumidityPercent >= numbers.wetFrom) return numbers.wetFactor
  return relativeHumidityPercent >= numbers.dampFrom ? numbers.dampFactor : 1
}
