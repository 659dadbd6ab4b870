import { expect, test } from 'vitest'
import { applyDiff, diffJobs, reverseDiff } from '../../core/project/diff.ts'
import { tableOf } from '../../core/project/empty-job.ts'
import type { Job } from '../../core/project/job.ts'
import { jobProblems } from '../../core/project/job-problems.ts'
import type {
  Opening,
  OpeningId,
  RoomId,
  StoreyId,
  TrimRunId,
  WallId,
} from '../../core/project/sketch-records.ts'
import type { Condition, ConditionId, Finish, KeptItem } from '../../core/project/survey-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import { openingTemplateFor } from '../../core/sketch/opening-templates.ts'
import { recordsOfRooms } from '../../core/sketch/room-copies.ts'
import { roomDefaultsFor } from '../../core/sketch/room-defaults.ts'
import { feet, inches, type Length, toFeet, zeroLength } from '../../core/units/length.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import {
  applied,
  corner,
  cornersInFeet,
  door,
  east,
  north,
  parlour,
  refusal,
  south,
  study,
  twoRooms,
  west,
  window,
} from './two-rooms.ts'

const ground = 'ground' as StoreyId
const hall = 'hall' as RoomId

test('the job the tests start from is sound', () => {
  expect(jobProblems(twoRooms())).toEqual([])
})

test('a new room takes the ceiling and baseboard of its storey', () => {
  const job = twoRooms()
  const studyOnly = applied(job, { kind: 'removeRecords', targets: [{ collection: 'rooms', id: parlour }] })
  const defaults = roomDefaultsFor(studyOnly, ground, () => 'hall-base')
  const next = applied(studyOnly, {
    kind: 'addRoom',
    id: hall,
    storeyId: ground,
    name: 'Hall',
    use: 'hall',
    corners: [corner(north, 0, 11), corner(east, 6, 11), corner(south, 6, 20), corner(west, 0, 20)],
    defaults,
  })
  expect(next.rooms[hall]).toMatchObject({ ceiling: { kind: 'flat', height: feet(8) }, wayOut: true })
  expect(next.trimRuns['hall-base']).toMatchObject({
    roomId: hall,
    kind: 'baseboard',
    height: inches(5.5),
    walls: null,
  })
})

test('shifting a wall outward keeps the neighbours square and the doors in place', () => {
  const job = twoRooms()
  const next = applied(job, {
    kind: 'moveWall',
    roomId: study,
    wallId: south,
    by: feet(2),
    withFacing: false,
  })
  expect(cornersInFeet(next, study)).toEqual([
    [0, 0],
    [12, 0],
    [12, 12],
    [0, 12],
  ])
  expect(next.openings[door]?.offset).toBe(feet(3))
})

test('shifting the north wall outward keeps a door where it stands in the plan', () => {
  const next = applied(twoRooms(), {
    kind: 'moveWall',
    roomId: study,
    wallId: north,
    by: feet(1),
    withFacing: false,
  })
  // The east wall now starts 1 ft farther north: 3 + 1.
  expect(next.openings[door]?.offset).toBe(feet(3 + 1))
})

test('a partition is shifted with both its faces', () => {
  const next = applied(twoRooms(), {
    kind: 'moveWall',
    roomId: study,
    wallId: east,
    by: feet(1),
    withFacing: true,
  })
  expect(cornersInFeet(next, study)[1]).toEqual([13, 0])
  expect(cornersInFeet(next, parlour)[0]).toEqual([13 + 5 / 12, 0])
  expect(next.openings[window]?.offset).toBe(feet(4 - 1))
})

test('where a corner goes off at a slant, an opening keeps its distance from the other end of its wall', () => {
  const job = applied(twoRooms(), { kind: 'joinOpening', openingId: door, far: null, casingFar: null })
  const lengthOf = (of: Job) => {
    const [start, end] = cornersInFeet(of, parlour) as [readonly [number, number], readonly [number, number]]
    return Math.hypot(end[0] - start[0], end[1] - start[1])
  }
  const next = applied(job, {
    kind: 'moveCorner',
    roomId: parlour,
    wallId: north,
    x: feet(14, 5),
    y: feet(3),
  })
  const fromEnd = (of: Job) => lengthOf(of) - toFeet(of.openings[window]?.offset ?? zeroLength)
  expect(lengthOf(next)).not.toBeCloseTo(lengthOf(job), 1)
  expect(fromEnd(next)).toBeCloseTo(fromEnd(job), 3)
})

test('a wall cannot be pushed up to the opposite one or through it, whichever way it faces', () => {
  const pushed = (wallId: WallId, feetInward: number) =>
    applyCommand(twoRooms(), {
      kind: 'moveWall',
      roomId: study,
      wallId,
      by: -feet(feetInward),
      withFacing: false,
    })
  // The study is 12 ft by 10 ft.
  expect(refusal(pushed(east, 12))).toBe('notAllowed')
  expect(refusal(pushed(east, 13))).toBe('notAllowed')
  expect(refusal(pushed(west, 13))).toBe('notAllowed')
  expect(refusal(pushed(south, 10))).toBe('notAllowed')
  expect(refusal(pushed(north, 11))).toBe('notAllowed')
  expect(pushed(west, 11).ok).toBe(true)
})

test('a new corner lies between the ends of its wall, and an outline keeps three of them', () => {
  const job = twoRooms()
  const insert = (at: Length, newWallId: string) =>
    applyCommand(job, {
      kind: 'insertCorner',
      roomId: study,
      wallId: north,
      at,
      newWallId: newWallId as WallId,
    })
  expect(refusal(insert(feet(0), 'new'))).toBe('wallTooShort')
  expect(insert(feet(12), 'new')).toMatchObject({
    problem: { sentence: expect.stringContaining('between the ends') },
  })
  expect(refusal(insert(feet(13), 'new'))).toBe('wallTooShort')
  expect(refusal(insert(feet(6), south))).toBe('duplicateId')
  expect(insert(feet(6), 'new').ok).toBe(true)
})

test('a typed length shifts the wall at the free end', () => {
  const longer = applied(twoRooms(), {
    kind: 'setWallLength',
    roomId: parlour,
    wallId: north,
    length: feet(15, 6.5),
    fixed: 'start',
  })
  expect(cornersInFeet(longer, parlour)[1]?.[0]).toBeCloseTo(12 + 5 / 12 + 15 + 6.5 / 12, 9)
  expect(cornersInFeet(longer, parlour)[2]?.[0]).toBeCloseTo(12 + 5 / 12 + 15 + 6.5 / 12, 9)
  const shorter = applied(twoRooms(), {
    kind: 'setWallLength',
    roomId: study,
    wallId: south,
    length: feet(11),
    fixed: 'start',
  })
  expect(cornersInFeet(shorter, study)).toEqual([
    [1, 0],
    [12, 0],
    [12, 10],
    [1, 10],
  ])
})

test('a corner moved out turns both walls, and a wall on it keeps its openings by the corner that stayed', () => {
  const next = applied(twoRooms(), {
    kind: 'moveCorner',
    roomId: parlour,
    wallId: east,
    x: feet(27, 5),
    y: feet(0),
  })
  expect(next.openings[window]?.offset).toBe(feet(4))
  const parted = applied(twoRooms(), { kind: 'joinOpening', openingId: door, far: null, casingFar: null })
  const start = applied(parted, {
    kind: 'moveCorner',
    roomId: parlour,
    wallId: north,
    x: feet(13, 5),
    y: feet(0),
  })
  expect(start.openings[window]?.offset).toBe(feet(4 - 1))
})

test('a wall split at a corner shares out its openings and its trim', () => {
  const newWallId = 'north-2' as WallId
  const next = applied(twoRooms(), {
    kind: 'insertCorner',
    roomId: parlour,
    wallId: north,
    at: feet(3),
    newWallId,
  })
  expect(next.openings[window]).toMatchObject({ wallId: newWallId, offset: feet(4 - 3) })
  expect(next.trimRuns['parlour-rail']?.walls).toEqual([north, newWallId, west])
  const back = applied(next, { kind: 'removeCorner', roomId: parlour, wallId: newWallId })
  expect(back).toEqual(twoRooms())
})

test('a far wall split at a corner keeps the door on the part it faces', () => {
  const newWallId = 'west-2' as WallId
  // The west wall runs from south to north; the door lies 10 - 3 - 2'8" = 4'4" to 7' from its start.
  const low = applied(twoRooms(), {
    kind: 'insertCorner',
    roomId: parlour,
    wallId: west,
    at: feet(2),
    newWallId,
  })
  expect(low.openings[door]?.far).toEqual({ roomId: parlour, wallId: newWallId })
  const high = applied(twoRooms(), {
    kind: 'insertCorner',
    roomId: parlour,
    wallId: west,
    at: feet(8),
    newWallId,
  })
  expect(high.openings[door]?.far).toEqual({ roomId: parlour, wallId: west })
})

test('removing a corner hands what was on its wall to the wall before', () => {
  const next = applied(twoRooms(), { kind: 'removeCorner', roomId: parlour, wallId: south })
  expect(next.rooms[parlour]?.corners.map(({ wallId }) => wallId)).toEqual([north, east, west])
  expect(refusal(applyCommand(next, { kind: 'removeCorner', roomId: parlour, wallId: east }))).toBe(
    'outlineDegenerate',
  )
})

test('a room that goes takes along what hangs on it, and leaves a shared door to the other', () => {
  const next = applied(twoRooms(), { kind: 'removeRecords', targets: [{ collection: 'rooms', id: study }] })
  expect(Object.keys(next.rooms)).toEqual([parlour])
  expect(next.trimRuns['study-base']).toBeUndefined()
  // Seen from the parlour's west wall, which runs the other way: 10 - 3 - 2'8" = 4'4".
  expect(next.openings[door]).toMatchObject({
    roomId: parlour,
    wallId: west,
    offset: feet(4, 4),
    far: null,
    casingNear: { width: inches(5) },
    casingFar: null,
  })
  expect(next.finishes['far-casing']?.scope).toEqual({
    level: 'surface',
    surface: { kind: 'opening', openingId: door, side: 'near', part: 'casing' },
  })
  expect(next.keptItems.lock).toBeDefined()
})

test('when the far room goes, the door stays with the near room and what was said of the far side goes', () => {
  const next = applied(twoRooms(), { kind: 'removeRecords', targets: [{ collection: 'rooms', id: parlour }] })
  expect(next.openings[door]).toMatchObject({ roomId: study, far: null, casingFar: null })
  expect(next.openings[window]).toBeUndefined()
  expect(next.finishes).toEqual({})
  expect(next.conditions).toEqual({})
  expect(next.keptItems).toEqual({})
})

test('a door set on a wall can be parted from the room behind and joined again', () => {
  const parted = applied(twoRooms(), { kind: 'joinOpening', openingId: door, far: null, casingFar: null })
  expect(parted.openings[door]?.far).toBeNull()
  expect(parted.finishes).toEqual({})
  const casingFar = parted.openings[door]?.casingNear ?? null
  const joined = applied(parted, {
    kind: 'joinOpening',
    openingId: door,
    far: { roomId: parlour, wallId: west },
    casingFar,
  })
  expect(joined.openings[door]?.casingFar).toEqual(casingFar)
  expect(
    refusal(
      applyCommand(parted, {
        kind: 'joinOpening',
        openingId: door,
        far: { roomId: study, wallId: west },
        casingFar,
      }),
    ),
  ).toBe('notAllowed')
})

test('rooms are copied with what is drawn in them, not with what was found', () => {
  const job = twoRooms()
  const newIds = Object.fromEntries(recordsOfRooms(job, [study, parlour]).map((id) => [id, `${id}-copy`]))
  const next = applied(job, {
    kind: 'duplicateRooms',
    roomIds: [study, parlour],
    storeyId: null,
    dx: 0,
    dy: feet(20),
    newIds,
    names: { [study]: 'Den' },
  })
  expect(Object.values(next.rooms).map((room) => room.name)).toEqual(['Study', 'Parlour', 'Den', 'Parlour'])
  expect(next.openings['door-copy']).toMatchObject({ roomId: 'study-copy', far: { roomId: 'parlour-copy' } })
  expect(next.finishes['far-casing-copy']?.scope).toMatchObject({ surface: { openingId: 'door-copy' } })
  expect(Object.keys(next.conditions)).toEqual(['crack'])
  const alone = applied(job, {
    kind: 'duplicateRooms',
    roomIds: [study],
    storeyId: null,
    dx: 0,
    dy: feet(20),
    newIds,
    names: {},
  })
  expect(alone.openings['door-copy']).toMatchObject({ roomId: 'study-copy', far: null })
  expect(
    refusal(
      applyCommand(job, {
        kind: 'duplicateRooms',
        roomIds: [study],
        storeyId: null,
        dx: 0,
        dy: 0,
        newIds: {},
        names: {},
      }),
    ),
  ).toBe('notFound')
})

test('an opening slides, changes size and changes wall', () => {
  const slid = applied(twoRooms(), { kind: 'moveOpening', openingId: window, offset: feet(6) })
  expect(slid.openings[window]?.offset).toBe(feet(6))
  const turned = applied(slid, { kind: 'moveOpening', openingId: window, offset: feet(1), wallId: east })
  expect(turned.openings[window]?.wallId).toBe(east)
  const size = { offset: feet(1), width: feet(5), height: feet(4), sill: feet(3) }
  expect(
    applied(turned, { kind: 'resizeOpening', openingId: window, ...size }).openings[window],
  ).toMatchObject(size)
  expect(
    refusal(applyCommand(turned, { kind: 'moveOpening', openingId: door, offset: feet(1), wallId: north })),
  ).toBe('notAllowed')
})

test('a new opening takes after the last of its kind', () => {
  const job = twoRooms()
  const wide = applied(job, { kind: 'setOpening', openingId: window, change: { width: feet(3, 4) } })
  expect(openingTemplateFor(wide, 'window').width).toBe(feet(3, 4))
  expect('far' in openingTemplateFor(wide, 'window')).toBe(false)
})

test('a sash taken out of an opening takes along what was said of the sash', () => {
  const job = applied(twoRooms(), {
    kind: 'putRecord',
    collection: 'conditions',
    record: {
      ...(twoRooms().conditions.crack as NonNullable<ReturnType<typeof twoRooms>['conditions'][string]>),
      id: 'putty' as ConditionId,
      kind: 'missingPutty',
      on: { level: 'surface', surface: { kind: 'opening', openingId: window, side: 'near', part: 'sash' } },
    },
  })
  const blind = applied(job, { kind: 'setOpening', openingId: window, change: { sash: null, kind: 'other' } })
  expect(Object.keys(blind.conditions)).toEqual(['crack'])
})

test('a record that would hang on nothing is refused, not swallowed', () => {
  const job = twoRooms()
  const crack = job.conditions.crack as NonNullable<(typeof job.conditions)[string]>
  const lost = {
    ...crack,
    id: 'lost' as ConditionId,
    on: { level: 'surface', surface: { kind: 'ceiling', roomId: 'cellar' as RoomId } },
  } as const
  expect(refusal(applyCommand(job, { kind: 'putRecord', collection: 'conditions', record: lost }))).toBe(
    'danglingReference',
  )
  const rail = job.trimRuns['parlour-rail'] as NonNullable<(typeof job.trimRuns)[string]>
  const stray = { ...rail, id: 'stray' as TrimRunId, roomId: study, walls: ['attic' as WallId] }
  expect(refusal(applyCommand(job, { kind: 'addTrimRun', trimRun: stray }))).toBe('danglingReference')
})

test('a number that is none never reaches the job', () => {
  const job = twoRooms()
  const outcome = applyCommand(job, { kind: 'moveOpening', openingId: window, offset: Number.NaN as Length })
  expect(refusal(outcome)).toBe('notValid')
  expect(
    refusal(applyCommand(job, { kind: 'moveRooms', roomIds: [study], dx: Number.POSITIVE_INFINITY, dy: 0 })),
  ).toBe('notValid')
  expect(refusal(applyCommand(job, { kind: 'renameRoom', roomId: study, name: '' }))).toBe('notValid')
})

test('a colour in use and a storey with rooms stay', () => {
  const job = twoRooms()
  expect(refusal(applyCommand(job, { kind: 'removeRecord', collection: 'colours', id: 'linen' }))).toBe(
    'stillInUse',
  )
  expect(refusal(applyCommand(job, { kind: 'removeStorey', storeyId: ground }))).toBe('stillInUse')
  const upper = { id: 'upper' as StoreyId, name: 'Upper storey', level: 1 }
  const two = applied(job, { kind: 'addStorey', storey: upper })
  expect(
    refusal(applyCommand(two, { kind: 'addStorey', storey: { ...upper, id: 'other' as StoreyId } })),
  ).toBe('notAllowed')
  const named = applied(two, { kind: 'renameStorey', storeyId: upper.id, name: 'Bedrooms' })
  expect(named.storeys.upper?.name).toBe('Bedrooms')
  expect(applied(named, { kind: 'removeStorey', storeyId: upper.id })).toEqual(job)
})

test('what hung on the wall of a removed corner goes to the wall before, which keeps a choice of its own', () => {
  const job = twoRooms()
  const wall = (wallId: WallId) => ({ kind: 'wall', roomId: parlour, wallId, zone: 'whole' }) as const
  const chosen = (id: string, wallId: WallId, colourId: string) => ({
    ...(Object.values(job.finishes)[0] as Finish),
    id: id as Finish['id'],
    scope: { level: 'surface', surface: wall(wallId) } as const,
    colourId: colourId as Finish['colourId'],
  })
  const [crack] = Object.values(job.conditions) as [Condition]
  const [lock] = Object.values(job.keptItems) as [KeptItem]
  const furnished = (finishes: readonly Finish[]): Job => ({
    ...job,
    finishes: tableOf(finishes),
    conditions: tableOf([{ ...crack, on: { level: 'surface', surface: wall(south) } }]),
    keptItems: tableOf([{ ...lock, on: { kind: 'wall', wallId: south } }]),
  })
  const merged = (finishes: readonly Finish[]) =>
    applied(furnished(finishes), { kind: 'removeCorner', roomId: parlour, wallId: south })
  const elsewhere = chosen('elsewhere', west, 'linen')
  const alone = merged([chosen('of-south', south, 'linen'), elsewhere])
  expect(alone.finishes['of-south']?.scope).toEqual({ level: 'surface', surface: wall(east) })
  expect(alone.finishes.elsewhere).toEqual(elsewhere)
  expect(alone.conditions.crack?.on).toEqual({ level: 'surface', surface: wall(east) })
  expect(alone.keptItems.lock?.on).toEqual({ kind: 'wall', wallId: east })
  const both = merged([chosen('of-south', south, 'linen'), chosen('of-east', east, 'linen')])
  expect(Object.keys(both.finishes)).toEqual(['of-east'])
})

test('somebody of the crew with marks or pins stays, and the answer says why; others go', () => {
  const job = everyRecordJob()
  const without = (collection: 'marks' | 'pins', from: Job) => ({ ...from, [collection]: {} })
  const dismiss = (from: Job, id: string) =>
    applyCommand(from, { kind: 'removeRecord', collection: 'crew', id })
  const marked = dismiss(job, 'ada')
  expect(marked.ok ? '' : marked.problem.sentence).toBe(
    'It is still used by what was marked or pinned for this person and 1 more. Change that first.',
  )
  const once = dismiss(without('marks', job), 'ada')
  expect(once.ok ? '' : once.problem.sentence).toBe(
    'It is still used by what was marked or pinned for this person. Change that first.',
  )
  expect(refusal(dismiss(without('pins', job), 'ada'))).toBe('stillInUse')
  const free = without('pins', without('marks', job))
  const left = dismiss(free, 'ada')
  expect(left.ok ? Object.keys(left.value.crew) : []).toEqual(['ben'])
})

test('commands on what is gone answer in words', () => {
  const job = twoRooms()
  const gone = 'gone' as RoomId
  expect(refusal(applyCommand(job, { kind: 'renameRoom', roomId: gone, name: 'X' }))).toBe('notFound')
  expect(
    refusal(applyCommand(job, { kind: 'moveCorner', roomId: study, wallId: 'gone' as WallId, x: 0, y: 0 })),
  ).toBe('notFound')
  expect(
    refusal(applyCommand(job, { kind: 'moveOpening', openingId: 'gone' as OpeningId, offset: feet(1) })),
  ).toBe('notFound')
  expect(refusal(applyCommand(job, { kind: 'removeRecord', collection: 'rooms', id: 'gone' }))).toBe(
    'notFound',
  )
})

test('an edit is undone and done again by its diff', () => {
  const job = twoRooms()
  const next = applied(job, { kind: 'removeRecords', targets: [{ collection: 'rooms', id: study }] })
  const diff = diffJobs(job, next)
  expect(applyDiff(job, diff)).toEqual(next)
  expect(applyDiff(next, reverseDiff(diff))).toEqual(job)
})

test('adding the same opening twice is refused', () => {
  const job = twoRooms()
  expect(refusal(applyCommand(job, { kind: 'addOpening', opening: job.openings[window] as Opening }))).toBe(
    'duplicateId',
  )
})

test('what cannot be is refused in words with the records it is about, and the sketch stays', () => {
  const job = twoRooms()
  const before = structuredClone(job)
  const wide = applyCommand(job, { kind: 'setOpening', openingId: window, change: { width: feet(15) } })
  expect(refusal(wide)).toBe('openingOutsideWall')
  if (!wide.ok) {
    expect(wide.problem.sentence).toContain('Parlour')
    expect(wide.problem.ids).toContain(window)
  }
  const twin = { ...(job.openings[window] as Opening), id: 'twin' as OpeningId, offset: feet(5) }
  expect(refusal(applyCommand(job, { kind: 'addOpening', opening: twin }))).toBe('openingsOverlap')
  const crossed = applyCommand(job, {
    kind: 'moveCorner',
    roomId: parlour,
    wallId: south,
    x: feet(14),
    y: feet(-5),
  })
  expect(refusal(crossed)).toBe('outlineCrossesItself')
  expect(refusal(applyCommand(job, { kind: 'moveRooms', roomIds: [parlour], dx: feet(4), dy: 0 }))).toBe(
    'farSideDoesNotFace',
  )
  expect(applied(job, { kind: 'moveRooms', roomIds: [study, parlour], dx: feet(4), dy: 0 }).openings).toEqual(
    job.openings,
  )
  expect(job).toEqual(before)
})
