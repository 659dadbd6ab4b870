import type { SiteMoment } from '../time/site-moment.ts'

/** How a room set is on a day; `closed` is out of use while nobody works in it and nothing is wet. */
type RoomDayKind = 'noWork' | 'notBegun' | 'inWork' | 'drying' | 'closed' | 'givenBack' | 'ready'

export interface RoomDay {
  readonly kind: RoomDayKind
  /** Dry to the touch then: of a day nobody works, what is wet at its begin; of a day of work, what is wet at its end. */
  readonly dryUntil: SiteMoment | null
  /** Local date on which work begins or goes on; null in work and after it. */
  readonly beginsOn: string | null
  /** Local date from which the room is in use again, perhaps only until the next stretch of work. */
  readonly freeOn: string | null
  /** Local date from which it is back for good. */
  readonly backOn: string | null
}
