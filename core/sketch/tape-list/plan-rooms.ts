import { present } from '../../lists/lists.ts'
import { type Job, records } from '../../project/job.ts'
import { jobProblems } from '../../project/job-problems.ts'
import type { Opening, Room, RoomId, Storey, StoreyId } from '../../project/sketch-records.ts'
import { storeyIdSchema } from '../../project/sketch-records.ts'
import { openingNouns } from '../../project/sketch-words.ts'
import { type Length, lengthFromUnits, unitsPerFoot } from '../../units/length.ts'
import type { Drawn, JoinedWay } from '../commands.ts'
import { openingTemplateFor } from '../opening-templates.ts'
import { withJoins } from '../room-edits.ts'
import { isPassage, roomKindOf, roomUseByName } from '../room-kinds.ts'
import { arrangeRooms, partnersOf } from './arrange-rooms.ts'
import { drawnBefore } from './drawn-before.ts'
import {
  furnished,
  joinedWay,
  type Listed,
  type MadeRoom,
  missingWalls,
  openingRecord,
  roomRecord,
  templatesOf,
  toSet,
  withOutsideWalls,
} from './room-records.ts'
import { countsOf } from './room-words.ts'
import { setOpenings } from './set-openings.ts'
import { withSlopes } from './slope-sides.ts'
import type { TapeLine, TapeOpening, TapeSentence } from './tape-records.ts'

/** What would be made of a list, before it is made. */
export interface TapePlan {
  readonly drawn: Drawn
  /** Doors of earlier rooms that lead into rooms of the list. */
  readonly joins: readonly JoinedWay[]
  /** The job with all of it, for drawing. */
  readonly job: Job
  /** The room made of a line, by the line's number. */
  readonly roomIds: ReadonlyMap<number, RoomId>
  /** What is said of each line beyond what reading it said, by the line's number. */
  readonly sentences: ReadonlyMap<number, readonly TapeSentence[]>
}

/**
 * Makes rooms, openings, trim and hardware of the lines that were understood. Rooms of a storey are set against each other, clear of what is
 * drawn. A room that cannot be as its line says is left out, and a sentence says why. `newId` gives new ids by a prefix.
 */
export function planTapeRooms(
  job: Job,
  lines: readonly TapeLine[],
  shown: StoreyId,
  newId: (prefix: string) => string,
): TapePlan {
  const said = new Map<number, readonly TapeSentence[]>()
  let listed = listedRooms(job, lines, shown, newId)
  for (;;) {
    const made = makeRooms(job, listed, newId)
    const wrong = new Map([...made.crowded, ...problemsByLine(made)])
    if (wrong.size === 0) return { ...made, sentences: withUsual(job, said, listed) }
    for (const [line, sentence] of wrong) said.set(line, [{ part: '', weight: 'stop', sentence }])
    listed = listed.filter(({ line }) => !wrong.has(line))
  }
}

/** What a line does not name is said to be the usual. */
function withUsual(
  job: Job,
  said: ReadonlyMap<number, readonly TapeSentence[]>,
  listed: readonly Listed[],
): ReadonlyMap<number, readonly TapeSentence[]> {
  const usual = listed.flatMap(({ line, room }): [number, TapeSentence[]][] => {
    if (!room.isUsual) return []
    const { doors, windows } = roomKindOf(job, room)
    const openings = usualOpenings(doors, windows)
    const sentence = `No doors or windows are named: ${countsOf(openings)} as usual.`
    return [[line, [{ part: '', weight: 'say', sentence }]]]
  })
  return new Map([...said, ...usual])
}

function listedRooms(
  job: Job,
  lines: readonly TapeLine[],
  shown: StoreyId,
  newId: (prefix: string) => string,
): readonly Listed[] {
  const storeys = new Map(records(job.storeys).map((storey) => [storey.id, storey]))
  let storey = job.storeys[shown]
  let ceilings: Length | null = null
  return lines.flatMap((line): readonly Listed[] => {
    ceilings = line.ceilings ?? ceilings
    if (line.storey !== null) {
      storey = storeyFor([...storeys.values()], line.storey, newId)
      storeys.set(storey.id, storey)
    }
    if (line.room === null || storey === undefined) return []
    const room = { ...line.room, use: roomUseByName(job, line.room.name) }
    const kind = roomKindOf(job, room)
    const height = room.height ?? ceilings ?? kind.height
    const named = room.isUsual ? usualOpenings(kind.doors, kind.windows) : room.openings
    const openings = [...named, ...usualOpenings(room.closets, 0)]
    const whole = { line: line.number, room, height, storey, openings }
    return [whole, ...closetsOf(whole)]
  })
}

/** Closets of a line as rooms of their own, with a door each. They stand behind their room, whose partners they are. */
function closetsOf(listed: Listed): readonly Listed[] {
  const { line, room, height, storey } = listed
  return room.closetRooms.map((size, index) => ({
    line,
    height: size.height ?? height,
    storey,
    openings: usualOpenings(1, 0),
    room: {
      ...room,
      ...size,
      name: `${room.name} closet${room.closetRooms.length === 1 ? '' : ` ${index + 1}`}`,
      use: 'closet',
      less: null,
      slope: null,
      isUsual: false,
      lights: null,
      radiators: 0,
      trim: [],
      without: [],
      note: '',
    },
  }))
}

/** The storey of that name, else of that level; an attic is over all others. */
function storeyFor(
  storeys: readonly Storey[],
  wanted: NonNullable<TapeLine['storey']>,
  newId: (prefix: string) => string,
): Storey {
  const named = storeys.find(({ name }) => name.toLowerCase() === wanted.name.toLowerCase())
  const isAttic = wanted.name.toLowerCase() === 'attic'
  const level = isAttic ? Math.max(0, ...storeys.map((one) => one.level)) + 1 : wanted.level
  return (
    named ??
    storeys.find((one) => one.level === level) ?? {
      id: storeyIdSchema.parse(newId('storey')),
      name: wanted.name,
      level,
    }
  )
}

function usualOpenings(doors: number, windows: number): readonly TapeOpening[] {
  const usual = { width: null, height: null, slab: null, parts: 1, isFixed: false, isOutside: false } as const
  const all: readonly TapeOpening[] = [
    { ...usual, kind: 'door', count: doors },
    { ...usual, kind: 'window', count: windows },
  ]
  return all.filter(({ count }) => count > 0)
}

type Made = Omit<TapePlan, 'sentences'> & {
  /** Every room that was made, closets too, with its line. */
  readonly lines: readonly (readonly [number, RoomId])[]
  readonly crowded: ReadonlyMap<number, string>
}

function makeRooms(job: Job, listed: readonly Listed[], newId: (prefix: string) => string): Made {
  const storeys = [...new Set(listed.map(({ storey }) => storey))]
  const parts = storeys.map((storey) =>
    makeStorey(
      job,
      storey,
      listed.filter((one) => one.storey === storey),
      newId,
    ),
  )
  const made = parts.flatMap(({ rooms }) => rooms)
  const joins = parts.flatMap((part) => part.joins)
  const byLine = [...made].sort((a, b) => a.line - b.line)
  const drawn: Drawn = {
    storeys: storeys.filter(({ id }) => job.storeys[id] === undefined),
    rooms: byLine.map(({ room }) => room),
    openings: named(
      job,
      byLine.flatMap(({ openings }) => openings),
    ),
    trimRuns: byLine.flatMap(({ trimRuns }) => trimRuns),
    keptItems: byLine.flatMap(({ keptItems }) => keptItems),
    builtItems: byLine.flatMap(({ builtItems }) => builtItems),
  }
  return {
    ...withSlopes(withJoins(job, joins), drawn, new Map(byLine.map(({ room, slope }) => [room.id, slope]))),
    // The room of a line stands before its closets, so that it is set last.
    joins,
    roomIds: new Map(byLine.toReversed().map(({ line, room }) => [line, room.id])),
    lines: byLine.map(({ line, room }) => [line, room.id]),
    crowded: new Map(parts.flatMap(({ crowded }) => crowded)),
  }
}

/** Openings are numbered by kind as those set by hand are. */
function named(job: Job, openings: readonly Opening[]): readonly Opening[] {
  const counts = new Map<string, number>()
  return openings.map((opening) => {
    const before =
      counts.get(opening.kind) ?? records(job.openings).filter(({ kind }) => kind === opening.kind).length
    counts.set(opening.kind, before + 1)
    const noun = openingNouns[opening.kind]
    return { ...opening, name: `${noun.charAt(0).toUpperCase()}${noun.slice(1)} ${before + 1}` }
  })
}

/** The first problem of each room that was made, by its line. */
function problemsByLine(made: Made): ReadonlyMap<number, string> {
  const problems = jobProblems(made.job)
  return new Map(
    made.lines.flatMap(([line, roomId]) => {
      const wrong = problems.find(({ ids }) => ids.includes(roomId))
      return wrong === undefined ? [] : [[line, wrong.sentence] as const]
    }),
  )
}

function makeStorey(job: Job, storey: Storey, listed: readonly Listed[], newId: (prefix: string) => string) {
  const door = openingTemplateFor(job, 'door')
  const gap = door.jambDepth > 0 ? door.jambDepth : lengthFromUnits(unitsPerFoot / 3)
  const toPlace = listed.map(({ room }) => ({ width: room.width, depth: room.depth, use: room.use }))
  const before = drawnBefore(job, storey.id)
  const places = arrangeRooms(toPlace, gap, door.width + 2 * (door.casingNear?.width ?? 0), before)
  const isFirst = before.rooms.length === 0
  const left = isFirst ? Math.min(...places.map(({ x }) => x)) : 0
  const top = isFirst ? Math.min(...places.map(({ y }) => y)) : 0
  const moved = places.map((place) => ({ ...place, x: place.x - left, y: place.y - top }))
  const templates = listed.map(({ openings }) => openings.flatMap((one) => templatesOf(job, one)))
  const fill = moved.map((place, index) => ({
    place,
    missing: missingWalls(present(listed[index]).room, place),
    openings: (templates[index] ?? []).map(toSet),
  }))
  const { set, joined, crowded } = setOpenings(fill, pairsOf(toPlace), gap, before)
  const rooms = listed.map((one, index) => roomRecord(job, one, present(moved[index]), newId))
  return {
    joins: joined.map((each) => joinedWay(each, rooms)),
    rooms: rooms.map((room, index): MadeRoom => {
      const { line, room: said } = present(listed[index])
      const own = set.filter((each) => each.room === index)
      const outer = own.filter(({ opening }) => fill[index]?.openings[opening]?.isOutdoors)
      const openings = own.map((each) => openingRecord(each, rooms, moved, templates[index] ?? [], newId))
      const doors = openings.filter(({ kind }) => kind === 'door').length
      const walled = withOutsideWalls(room, new Set(outer.map(({ side }) => side)))
      return { line, slope: said.slope, room: walled, openings, ...furnished(job, said, room, doors, newId) }
    }),
    crowded: crowded.map((index): [number, string] => {
      const { line, room, openings } = present(listed[index])
      return [line, `${countsOf(openings)} do not fit on the walls of ${room.name}.`]
    }),
  }
}

/** Nobody walks through a closet, from bedroom to bedroom, or through a bath that is not a bedroom's own. */
function maySharePassage(one: Room['use'], other: Room['use']): boolean {
  const uses = [one, other]
  if (uses.includes('closet')) return false
  if (uses.some(isPassage)) return true
  return uses.includes('bath') ? uses.includes('bedroom') : one !== 'bedroom' || other !== 'bedroom'
}

/** Closets with their rooms first, then rooms with the hall, then whatever else stands back to back. */
function pairsOf(
  rooms: readonly { readonly width: number; readonly depth: number; readonly use: Room['use'] }[],
) {
  const wanted = partnersOf(rooms).flatMap((partner, index) =>
    partner === null ? [] : [[partner, index] as const],
  )
  const closetsFirst = [...wanted].sort(
    ([, a], [, b]) => Number(rooms[b]?.use === 'closet') - Number(rooms[a]?.use === 'closet'),
  )
  const others = rooms.flatMap((one, a) =>
    rooms.flatMap((other, b) => (b > a && maySharePassage(one.use, other.use) ? [[a, b] as const] : [])),
  )
  return [...closetsFirst, ...others]
}
