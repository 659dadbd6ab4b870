import type { Job } from '../../core/project/job.ts'
import type { Mark, MarkId } from '../../core/project/progress-records.ts'
import type { Opening, Room, RoomId, StoreyId, WallId } from '../../core/project/sketch-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../core/sketch/commands.ts'
import { firstOpenings } from '../../core/sketch/opening-templates.ts'
import { feet, sumLengths } from '../../core/units/length.ts'
import type { JobStore } from '../../renderer/state/job-store.ts'
import { conditionOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'

/** Something the user does, so many seconds after the thing before. */
export interface Doing {
  readonly after: number
  readonly act: (jobs: JobStore) => void
}

function does(after: number, name: string, commandOf: (job: Job) => SketchCommand): Doing {
  return {
    after,
    act: (jobs) => {
      const { job } = jobs.store.getState()
      if (job === null) throw new Error('no job is open')
      const outcome = applyCommand(job, commandOf(job))
      if (!jobs.perform(name, outcome)) throw new Error(`${name} was not done`)
    },
  }
}

const undoes = (after: number): Doing => ({ after, act: (jobs) => jobs.undo() })
const redoes = (after: number): Doing => ({ after, act: (jobs) => jobs.redo() })

function putRoom(id: string, x: number): (job: Job) => SketchCommand {
  const room = rectangularRoom(id, 12, 10, { storeyId: 'ground' as StoreyId })
  const corners = room.corners.map((corner) => ({ ...corner, x: sumLengths([corner.x, feet(x)]) }))
  return () => ({ kind: 'putRecord', collection: 'rooms', record: { ...room, corners } })
}

function changedRoom(id: string, change: Partial<Omit<Room, 'id' | 'corners'>>): (job: Job) => SketchCommand {
  return () => ({ kind: 'setRoom', roomId: id as RoomId, change })
}

function putWindow(id: string, room: string, offset: number): (job: Job) => SketchCommand {
  const opening: Opening = {
    ...firstOpenings.window,
    id: id as Opening['id'],
    name: '',
    roomId: room as RoomId,
    wallId: 'north' as WallId,
    offset: feet(offset),
    far: null,
    casingFar: null,
  }
  return () => ({ kind: 'putRecord', collection: 'openings', record: opening })
}

function markOf(number: number): (job: Job) => SketchCommand {
  const record: Mark = {
    id: `mark-${number}` as MarkId,
    stepKey: `study/step-${number % 3}`,
    mark: number % 2 === 0 ? 'started' : 'done',
    at: `2027-04-0${1 + (number % 9)}T09:00`,
    crewMemberIds: [],
    actualMinutes: null,
    note: '',
  }
  return () => ({ kind: 'putRecord', collection: 'marks', record })
}

/** Rooms drawn, openings moved, things found, finishes chosen, ticks on site; undone and done again; slowly and in bursts. */
export const hourOfWork: readonly Doing[] = [
  does(20, 'name the client', () => ({ kind: 'setHeader', change: { client: 'Somebody' } })),
  does(45, 'draw the hall', putRoom('hall', 20)),
  does(30, 'name the hall', changedRoom('hall', { name: 'Hall' })),
  does(2, 'name the hall again', changedRoom('hall', { name: 'Front hall' })),
  does(60, 'put a window', putWindow('hall-window', 'hall', 2)),
  does(15, 'slide it', () => ({
    kind: 'moveOpening',
    openingId: 'hall-window' as Opening['id'],
    offset: feet(4),
  })),
  undoes(4),
  redoes(3),
  does(90, 'draw the den', putRoom('den', 40)),
  does(0.005, 'a first quick word', changedRoom('den', { note: 'a' })),
  does(0.005, 'a second', changedRoom('den', { note: 'ab' })),
  does(0.005, 'a third', changedRoom('den', { note: 'abc' })),
  undoes(0.005),
  does(120, 'find a crack', () => ({
    kind: 'putRecord',
    collection: 'conditions',
    record: conditionOn('crack', 'stressCrack', { roomId: 'hall', surfaceClass: 'walls' }),
  })),
  does(30, 'measure it', () => ({
    kind: 'putRecord',
    collection: 'conditions',
    record: conditionOn(
      'crack',
      'stressCrack',
      { roomId: 'hall', surfaceClass: 'walls' },
      { length: feet(6) },
    ),
  })),
  does(200, 'choose a finish', () => ({
    kind: 'putRecord',
    collection: 'finishes',
    record: finishFor('ceiling', 'latexCeiling', null, 'flat'),
  })),
  does(40, 'remove the hall', () => ({
    kind: 'removeRecords',
    targets: [{ collection: 'rooms', id: 'hall' }],
  })),
  undoes(20),
  does(70, 'change the day', () => ({ kind: 'setHeader', change: { startsOn: '2027-05-04' } })),
  does(70, 'one room at a time', () => ({ kind: 'setHouseRules', change: { maxRoomsOutOfUse: 1 } })),
  undoes(1),
  undoes(1),
  undoes(1),
  redoes(1),
  redoes(1),
  does(300, 'add a storey', () => ({
    kind: 'addStorey',
    storey: { id: 'upper' as StoreyId, name: 'Upper', level: 1 },
  })),
  ...Array.from({ length: 24 }, (_, number) => does(number % 5 === 0 ? 200 : 6, 'tick', markOf(number))),
  undoes(15),
  does(30, 'take the crack out', () => ({ kind: 'removeRecord', collection: 'conditions', id: 'crack' })),
  undoes(45),
  does(60, 'name the job', () => ({ kind: 'setHeader', change: { title: 'House at the end' } })),
  does(0.002, 'name it otherwise', () => ({ kind: 'setHeader', change: { title: 'House at the very end' } })),
]
