import { localInstant, localMoments } from '../schedule/job/site-hours.ts'

/** A moment on site as it is written everywhere, `2027-03-31T08:30`. */
export type SiteMoment = string

/** Minutes since 1970 UTC of a local moment in an IANA zone. */
export function instantOf(moment: SiteMoment, timeZone: string): number {
  return localInstant(moment, timeZone)
}

export function momentOf(instant: number, timeZone: string): SiteMoment {
  return localMoments(timeZone)(instant)
}

/** Wall-clock time goes on through nights and through the changes of summer time. */
export function momentAfter(moment: SiteMoment, elapsed: number, timeZone: string): SiteMoment {
  return momentOf(instantOf(moment, timeZone) + Math.ceil(elapsed), timeZone)
}
