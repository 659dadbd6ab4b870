import type { Job } from '../../project/job.ts'
import { lettersOfSet } from '../../project/opening-letters.ts'
import type { RoomSet } from '../../project/room-sets.ts'
import type { Opening, OpeningId, RoomId } from '../../project/sketch-records.ts'
import { openingNoun, openingNouns } from '../../project/sketch-words.ts'
import type { Takeoff } from '../../quantities/takeoff-types.ts'
import type { Step } from '../../specification/types.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import type { OpeningLine } from './sheet-types.ts'

/** One room set and all that its sheet is made from. */
export interface SetContext {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly set: RoomSet
  /** Of all rooms of the set, in a valid order of work. */
  readonly steps: readonly Step[]
  readonly stepOf: ReadonlyMap<string, Step>
  readonly openings: readonly OpeningLine[]
  readonly letters: ReadonlyMap<OpeningId, string>
  readonly system: LengthUnitSystem
}

/** What all parts of a room set's sheet read. */
export function setContext(job: Job, takeoff: Takeoff, set: RoomSet, steps: readonly Step[]): SetContext {
  const openings = openingLines(job, set)
  return {
    job,
    takeoff,
    set,
    steps,
    stepOf: new Map(steps.map((step) => [step.key, step])),
    openings,
    letters: new Map(openings.map(({ openingId, letter }) => [openingId, letter])),
    system: job.header.unitSystem,
  }
}

/** Every opening of the set once, by its letter. */
function openingLines(job: Job, set: RoomSet): readonly OpeningLine[] {
  const here = new Set<RoomId>(set.roomIds)
  return [...lettersOfSet(job, set)].flatMap(([openingId, letter]) => {
    const opening = job.openings[openingId]
    if (opening === undefined) return []
    return [{ openingId, letter, words: `${nounOnSheet(opening)}${leadsTo(job, opening, here)}` }]
  })
}

/** A name that says already what it is, such as `Door 2`, stands alone. */
function nounOnSheet(opening: Opening): string {
  const { name } = opening
  return name.toLowerCase().startsWith(openingNouns[opening.kind]) ? name : openingNoun(opening)
}

function leadsTo(job: Job, opening: Opening, here: ReadonlySet<RoomId>): string {
  if (opening.far === null) return ''
  const outside = [opening.roomId, opening.far.roomId].filter((id) => !here.has(id))
  const names = (outside.length > 0 ? outside : [opening.far.roomId]).map((id) => job.rooms[id]?.name ?? id)
  return ` to ${names.join(', ')}`
}
