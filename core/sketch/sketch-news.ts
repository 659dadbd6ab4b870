import type { Point } from '../geometry/point.ts'
import { polygonArea, polygonBounds } from '../geometry/polygon.ts'
import { type Job, records } from '../project/job.ts'
import type { Opening, Room } from '../project/sketch-records.ts'
import { openingNoun } from '../project/sketch-words.ts'
import { areaFromSquareUnits, formatArea } from '../units/area.ts'
import { formatLength, type LengthUnitSystem, lengthFromUnits } from '../units/length.ts'
import { capital } from '../words/text.ts'

/** So many changes are said one by one; more are counted. */
const told = 3

/**
 * What a drag, a key or an undo changed in the sketch, in words for somebody who does not see it: rooms moved and how far, their
 * new sizes, openings and where they stand. Empty where rooms and openings are the same.
 */
export function sketchNews(before: Job, after: Job): string {
  const system = after.header.unitSystem
  const sentences = [
    ...changes(
      before.rooms,
      after.rooms,
      (room) => room.name,
      (one, other) => roomNews(one, other, system),
    ),
    ...changes(
      before.openings,
      after.openings,
      (opening) => capital(openingNoun(opening)),
      (one, other) => openingNews(after, one, other),
    ),
  ]
  const more = sentences.length - told
  return [...sentences.slice(0, told), ...(more > 0 ? [`And ${more} more changed.`] : [])].join(' ')
}

/** One sentence for each record that came, went or is another one now; null where there is nothing to say of it. */
function changes<Kept extends { readonly id: string }>(
  before: Readonly<Record<string, Kept>>,
  after: Readonly<Record<string, Kept>>,
  nameOf: (record: Kept) => string,
  news: (before: Kept | null, after: Kept) => string | null,
): readonly string[] {
  const gone = records(before).filter(({ id }) => after[id] === undefined)
  return [
    ...gone.map((record) => `${nameOf(record)} removed.`),
    ...records(after).flatMap((record) => {
      const old = before[record.id] ?? null
      return old === record ? [] : (news(old, record) ?? [])
    }),
  ]
}

function roomNews(before: Room | null, after: Room, system: LengthUnitSystem): string | null {
  const size = sizeWords(after, system)
  if (before === null) return `${after.name} added, ${size}.`
  const shift = shiftBetween(before.corners, after.corners)
  if (shift === null) return `${after.name} is now ${size}.`
  return shift.x === 0 && shift.y === 0 ? null : `${after.name} moved ${shiftWords(shift, system)}.`
}

/** How far every corner moved, or null where they did not all move alike. */
function shiftBetween(before: readonly Point[], after: readonly Point[]): Point | null {
  const shifts = after.map(({ x, y }, index) => ({
    x: x - (before[index]?.x ?? Number.NaN),
    y: y - (before[index]?.y ?? Number.NaN),
  }))
  const [first] = shifts
  const isOne = before.length === after.length && shifts.every(({ x, y }) => x === first?.x && y === first.y)
  return isOne && first !== undefined ? first : null
}

/** `2' 0" right and 1' 0" up`; the sheet's y goes down. */
function shiftWords({ x, y }: Point, system: LengthUnitSystem): string {
  const part = (way: number, less: string, more: string) =>
    way === 0 ? [] : [`${formatLength(lengthFromUnits(Math.abs(way)), system)} ${way < 0 ? less : more}`]
  return [...part(x, 'left', 'right'), ...part(y, 'up', 'down')].join(' and ')
}

/** `Kitchen picked, 12' 0" by 14' 0", 168.0 sq ft.`; empty where nothing or more than one room is picked. */
export function pickedNews(job: Job, ids: readonly string[]): string {
  const room = ids.length === 1 ? job.rooms[ids[0] ?? ''] : undefined
  return room === undefined ? '' : `${room.name} picked, ${sizeWords(room, job.header.unitSystem)}.`
}

/** `12' 0" by 14' 0", 168.0 sq ft`, the box around the room and what is inside it. */
function sizeWords({ corners }: Room, system: LengthUnitSystem): string {
  const { min, max } = polygonBounds(corners)
  const [width, depth] = [max.x - min.x, max.y - min.y].map((side) =>
    formatLength(lengthFromUnits(side), system),
  )
  return `${width} by ${depth}, ${formatArea(areaFromSquareUnits(polygonArea(corners)), system)}`
}

function openingNews(job: Job, before: Opening | null, after: Opening): string | null {
  const system = job.header.unitSystem
  const where = `${capital(openingNoun(after))} of ${job.rooms[after.roomId]?.name ?? 'a room'}`
  const place = `${formatLength(after.width, system)} wide, ${formatLength(after.offset, system)} along its wall`
  if (before === null) return `${where} added, ${place}.`
  const isSame = (['roomId', 'wallId', 'width', 'offset'] as const).every(
    (name) => before[name] === after[name],
  )
  return isSame ? null : `${where} is now ${place}.`
}
