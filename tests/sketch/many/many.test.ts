import { expect, test } from 'vitest'
import { type Job, records } from '../../../core/project/job.ts'
import { openingLetter, openingNameIn } from '../../../core/project/opening-letters.ts'
import type { Outcome } from '../../../core/project/problem.ts'
import type { TrimRunId } from '../../../core/project/sketch-records.ts'
import type {
  ColourId,
  ConditionId,
  ExistingId,
  FinishId,
  KeptItemId,
} from '../../../core/project/survey-records.ts'
import { takeOff } from '../../../core/quantities/take-off.ts'
import { applyTogether } from '../../../core/sketch/apply-command.ts'
import { classesOfPicked, pickedOf, pickMany, scopesOfPicked } from '../../../core/sketch/many/picked.ts'
import {
  existingOnMany,
  findingOnMany,
  findingPlaces,
  finishAt,
  finishOnMany,
  keptOnMany,
} from '../../../core/sketch/many/set-records.ts'
import {
  noTrimOnMany,
  openingsOnMany,
  roomsOnMany,
  runsOfPicked,
  trimOnMany,
} from '../../../core/sketch/many/set-sketch.ts'
import { feet, inches } from '../../../core/units/length.ts'
import { door, east, north, parlour, study, twoRooms, window } from '../two-rooms.ts'

let made = 0
const newId = <Id extends string>() => `new-${++made}` as Id

function done(outcome: Outcome<Job>): Job {
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  return outcome.value
}

test('things are picked by kind and place; an opening between two rooms is at both', () => {
  const job = twoRooms()
  expect(pickMany(job, 'rooms', null)).toEqual([study, parlour])
  expect(pickMany(job, 'door', { roomIds: [parlour] })).toEqual([door])
  expect(pickMany(job, 'door', { roomIds: [study] })).toEqual([door])
  expect(pickMany(job, 'window', { use: 'living' })).toEqual([window])
  expect(pickMany(job, 'window', { roomIds: [study] })).toEqual([])
  expect(pickMany(job, 'walls', { roomIds: [study] })).toHaveLength(4)
})

test('a wall picked with its room is the room; alone it is a wall, and what is gone is nothing', () => {
  const job = twoRooms()
  expect(pickedOf(job, [study, `${study}/${north}`])).toMatchObject({ rooms: [{ id: study }], walls: [] })
  expect(pickedOf(job, [`${study}/${north}`]).walls.map(({ id }) => id)).toEqual([north])
  expect(pickedOf(job, [`${study}/gone`, 'gone', 'gone/north'])).toEqual({
    rooms: [],
    openings: [],
    walls: [],
  })
})

test('heights of many are set together or not at all, and the room in the way is named', () => {
  const job = twoRooms()
  const rooms = records(job.rooms)
  const flat = (height: ReturnType<typeof feet>) =>
    applyTogether(job, roomsOnMany(rooms, { ceiling: { kind: 'flat', height } }))
  const after = done(flat(feet(9, 2)))
  expect(records(after.rooms).map(({ ceiling }) => ceiling)).toEqual([
    { kind: 'flat', height: feet(9, 2) },
    { kind: 'flat', height: feet(9, 2) },
  ])
  // The door is 6 ft 8 in high.
  const refused = flat(feet(6))
  expect(refused.ok ? '' : refused.problem.sentence).toMatch(/door|window/i)
})

test('what one change breaks another of the same action may mend', () => {
  const job = twoRooms()
  const low = roomsOnMany(records(job.rooms), { ceiling: { kind: 'flat', height: feet(5) } })
  const lower = openingsOnMany(records(job.openings), () => ({ height: feet(4), sill: inches(6) }))
  expect(applyTogether(job, [...low, ...lower]).ok).toBe(true)
  expect(applyTogether(job, low).ok).toBe(false)
})

test('trim runs along all picked rooms, or along picked walls only, and comes off again', () => {
  const job = twoRooms()
  const all = pickedOf(job, [study, parlour])
  const crowned = done(applyTogether(job, trimOnMany(job, all, 'crown', newId<TrimRunId>)))
  expect(runsOfPicked(crowned, all, 'crown').map(({ walls }) => walls)).toEqual([null, null])
  const oneWall = pickedOf(job, [`${study}/${north}`])
  const without = done(applyTogether(crowned, noTrimOnMany(crowned, oneWall, 'crown')))
  const [ofStudy, ofParlour] = runsOfPicked(without, all, 'crown')
  expect(ofStudy?.walls).toHaveLength(3)
  expect(ofStudy?.walls).not.toContain(north)
  expect(ofParlour?.walls).toBeNull()
  const back = done(applyTogether(without, trimOnMany(without, oneWall, 'crown', newId<TrimRunId>)))
  expect(runsOfPicked(back, oneWall, 'crown')[0]?.walls).toHaveLength(4)
  const none = done(applyTogether(back, noTrimOnMany(back, all, 'crown')))
  expect(runsOfPicked(none, all, 'crown')).toEqual([])
})

test('what is not said of many stays, coats asked for beyond the rules too', () => {
  const job = twoRooms()
  const places = scopesOfPicked(pickedOf(job, [study, parlour]), takeOff(job).surfaces, 'walls')
  const more = done(applyTogether(job, finishOnMany(job, places, { moreCoats: 2 }, newId<FinishId>)))
  const satin = done(applyTogether(more, finishOnMany(more, places, { sheen: 'satin' }, newId<FinishId>)))
  for (const place of places) expect(finishAt(satin, place)).toMatchObject({ sheen: 'satin', moreCoats: 2 })
})

test('finish, what is there, findings and hardware reach each room or piece once', () => {
  const job = twoRooms()
  const { surfaces } = takeOff(job)
  const rooms = pickedOf(job, [study, parlour])
  expect(classesOfPicked(rooms, surfaces).has('walls')).toBe(true)
  const walls = scopesOfPicked(rooms, surfaces, 'walls')
  expect(walls.map(({ scope }) => scope.level)).toEqual(['room', 'room'])
  const sash = scopesOfPicked(pickedOf(job, [window]), surfaces, 'sash')
  expect(sash.map(({ scope }) => scope)).toEqual([
    { level: 'surface', surface: { kind: 'opening', openingId: window, side: 'near', part: 'sash' } },
  ])
  const colourId = records(job.colours)[0]?.id ?? ('none' as ColourId)
  const after = done(
    applyTogether(job, [
      ...finishOnMany(job, walls, { colourId }, newId<FinishId>),
      ...existingOnMany(job, [...walls, ...sash], { coat: 'oilPaint' }, newId<ExistingId>),
      ...findingOnMany(
        findingPlaces(sash),
        {
          kind: 'missingPutty',
          severity: 'moderate',
          length: feet(2),
          areaMm2: null,
          count: null,
          suspectedCause: '',
          causeCured: false,
          note: '',
          photo: null,
          foundOn: null,
        },
        newId<ConditionId>,
      ),
      ...keptOnMany(
        job,
        pickedOf(job, [study, parlour, door]),
        { kind: 'plate', name: 'Plates', count: 4, handling: 'takeOff', wired: false },
        newId<KeptItemId>,
      ),
    ]),
  )
  for (const place of walls) expect(finishAt(after, place)).toMatchObject({ colourId, paint: true })
  const said = records(after.existing).filter(({ coat }) => coat === 'oilPaint')
  expect(said.length).toBeGreaterThanOrEqual(3)
  const found = records(after.conditions).filter(({ kind }) => kind === 'missingPutty')
  expect(found.map(({ on }) => on.level)).toContain('surface')
  const plates = records(after.keptItems).filter(({ name }) => name === 'Plates')
  expect(plates.map(({ on }) => on.kind)).toEqual(['room', 'room', 'opening'])
  // Said once more, nothing is there twice.
  const again = done(
    applyTogether(
      after,
      keptOnMany(
        after,
        pickedOf(after, [study, parlour, door]),
        { kind: 'plate', name: 'Plates', count: 6, handling: 'takeOff', wired: false },
        newId<KeptItemId>,
      ),
    ),
  )
  expect(
    records(again.keptItems)
      .filter(({ name }) => name === 'Plates')
      .map(({ count }) => count),
  ).toEqual([6, 6, 6])
  const taken = done(
    applyTogether(
      again,
      existingOnMany(
        again,
        walls,
        { substrate: null, coat: null, sheen: null, depth: null, textured: null },
        newId<ExistingId>,
      ),
    ),
  )
  expect(
    records(taken.existing).some(({ scope }) => scope.level === 'room' && scope.surfaceClass === 'walls'),
  ).toBe(false)
})

test('openings have a letter in each room, after its walls; two of one name are told apart by it', () => {
  const job = twoRooms()
  const model = job.openings[window]
  if (model === undefined) throw new Error('no window')
  const second = { ...model, id: 'second' as typeof window, wallId: east, offset: feet(1) }
  const two: Job = { ...job, openings: { ...job.openings, second } }
  expect([door, window, second.id].map((id) => openingLetter(two, id, parlour))).toEqual(['E', 'F', 'G'])
  expect(openingLetter(two, door, study)).toBe('E')
  expect(openingLetter(two, window, study)).toBe('')
  const called = openingNameIn(job, model, parlour)
  expect([model, second].map((each) => openingNameIn(two, each, parlour))).toEqual([
    `${called} F`,
    `${called} G`,
  ])
})
