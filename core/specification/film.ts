/** Dry film left by a wet one: WFT x volume solids (MIL-HDBK-1110 s. 2.1.5). Any one unit of thickness in and out. */
export function dryFilm(wetFilm: number, volumeSolidsPercent: number): number {
  return (wetFilm * volumeSolidsPercent) / 100
}

/** Wet film to put on for a dry one; what a comb gauge should show. */
export function wetFilm(dryFilmWanted: number, volumeSolidsPercent: number): number {
  return (dryFilmWanted * 100) / volumeSolidsPercent
}

/** Volume solids of a thinned paint: VS / (1 + thinner), thinner as a share of the paint's volume (coatings page). */
export function thinnedSolids(volumeSolidsPercent: number, thinnerShare: number): number {
  return volumeSolidsPercent / (1 + thinnerShare)
}
