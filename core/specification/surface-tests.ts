/** MPI gloss levels 1-7 from readings at 60 and 85 degrees. */
export type GlossLevel = 1 | 2 | 3 | 4 | 5 | 6 | 7

/**
 * Gloss level by the MPI table. Levels 3 and 4 overlap between 20 and 25 units at 60 degrees; there the 85 degree reading
 * (sheen) decides, 35 and over being level 4. `at85` is null where it was not read: then the lower level is given.
 */
export function glossLevelOf(at60: number, at85: number | null): GlossLevel {
  if (at60 > 85) return 7
  if (at60 > 70) return 6
  if (at60 > 35 || (at60 === 35 && at85 === null)) return 5
  if (at60 > 25) return 4
  if (at60 >= 20 && at85 !== null && at85 >= 35) return 4
  if (at60 > 10) return 3
  return at60 > 5 || (at85 !== null && at85 > 10) ? 2 : 1
}

/** ASTM D3359 cross-cut: percent of the coat removed to class 5B (none) ... 0B (over 65). The limits 15, 35, 65 go to the better class. */
export function adhesionClass(removedPercent: number): '5B' | '4B' | '3B' | '2B' | '1B' | '0B' {
  if (removedPercent <= 0) return '5B'
  if (removedPercent < 5) return '4B'
  if (removedPercent <= 15) return '3B'
  if (removedPercent <= 35) return '2B'
  return removedPercent <= 65 ? '1B' : '0B'
}
