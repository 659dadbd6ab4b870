import { z } from 'zod'
import { type CollectionDiff, diffJobs, type JobDiff } from '../project/diff.ts'
import { formSentence, pathText } from '../project/form-sentence.ts'
import { frozenProblems } from '../project/frozen-records.ts'
import { collectionNames, type Job, recordSchemas, singleNames, singleSchemas } from '../project/job.ts'
import { jobProblems } from '../project/job-problems.ts'
import { fail, type Outcome, type Problem, succeed } from '../project/problem.ts'
import { referenceProblems } from '../project/references.ts'
import { withBehindByPlan } from './behind-walls.ts'
import type { RecordTarget, SketchCommand } from './commands.ts'
import { findRoom, withRecords } from './job-edits.ts'
import { addOpening, joinOpening, moveOpening, partOpening, setOpening } from './opening-edits.ts'
import {
  insertCorner,
  moveCorner,
  moveWall,
  removeCorner,
  setWallBehind,
  setWallLength,
} from './outline-edits.ts'
import { removeTargets, takeAlong } from './removal.ts'
import { duplicateRooms } from './room-copies.ts'
import { addDrawn, addRoom, moveRooms } from './room-edits.ts'
import { addStorey, removeStorey, renameStorey } from './storey-edits.ts'

/**
 * The one way a hand changes a job. Answers the job after the command (`diffJobs` gives the edit as data), or a problem with a
 * sentence for the place where it was tried; then the job given stands as it was. What comes back is always a job that may be stored.
 */
export function applyCommand(job: Job, command: SketchCommand): Outcome<Job> {
  return applyTogether(job, [command])
}

/** The job after several commands of which only the end has to be sound: what one of them breaks another may mend. */
export function applyTogether(job: Job, commands: readonly SketchCommand[]): Outcome<Job> {
  const changed = commands.reduce<Outcome<Job>>(
    (outcome, each) => (outcome.ok ? changeJob(outcome.value, each) : outcome),
    succeed(job),
  )
  if (!changed.ok) return changed
  const next = withBehindByPlan(job, takeAlong(changed.value))
  for (const command of commands) {
    const lost = lostRecord(command, changed.value, next)
    if (lost) return { ok: false, problem: lost }
  }
  const wrongForm = checkForms(diffJobs(job, next))
  if (!wrongForm.ok) return wrongForm
  const wrong = frozenProblems(job, next)[0] ?? jobProblems(next)[0]
  return wrong === undefined ? succeed(next) : { ok: false, problem: wrong }
}

/** The job after several commands, each made on what the one before left; else the first problem on the way. */
export function applyCommands(job: Job, commands: readonly SketchCommand[]): Outcome<Job> {
  return commands.reduce<Outcome<Job>>(
    (outcome, each) => (outcome.ok ? applyCommand(outcome.value, each) : outcome),
    succeed(job),
  )
}

/** What a command puts in must itself have a place to hang on; it is refused, not quietly let go of again. */
function lostRecord(command: SketchCommand, changed: Job, next: Job): Problem | undefined {
  const target = targetOf(command)
  if (target === null || next[target.collection][target.id] === changed[target.collection][target.id])
    return undefined
  return referenceProblems(changed).find((wrong) => wrong.ids.includes(target.id))
}

function targetOf(command: SketchCommand): RecordTarget | null {
  switch (command.kind) {
    case 'putRecord':
      return { collection: command.collection, id: command.record.id }
    case 'addOpening':
      return { collection: 'openings', id: command.opening.id }
    case 'setOpening':
    case 'joinOpening':
    case 'moveOpening':
      return { collection: 'openings', id: command.openingId }
    case 'partOpening':
      return { collection: 'openings', id: command.newId }
    case 'addTrimRun':
      return { collection: 'trimRuns', id: command.trimRun.id }
    case 'addCeilingOpening':
      return { collection: 'ceilingOpenings', id: command.ceilingOpening.id }
    default:
      return null
  }
}

function changeJob(job: Job, command: SketchCommand): Outcome<Job> {
  switch (command.kind) {
    case 'addRoom':
      return addRoom(job, command)
    case 'addDrawn':
      return addDrawn(job, command)
    case 'moveCorner':
      return moveCorner(job, command)
    case 'moveWall':
      return moveWall(job, command)
    case 'setWallLength':
      return setWallLength(job, command)
    case 'setWallBehind':
      return setWallBehind(job, command)
    case 'moveRooms':
      return moveRooms(job, command)
    case 'insertCorner':
      return insertCorner(job, command)
    case 'removeCorner':
      return removeCorner(job, command)
    case 'addOpening':
      return addOpening(job, command.opening)
    case 'moveOpening':
      return moveOpening(job, command)
    case 'resizeOpening': {
      const { offset, width, height, sill } = command
      return setOpening(job, command.openingId, { offset, width, height, sill })
    }
    case 'setOpening':
      return setOpening(job, command.openingId, command.change)
    case 'joinOpening':
      return joinOpening(job, command)
    case 'partOpening':
      return partOpening(job, command)
    case 'addTrimRun':
      return addNew(job, 'trimRuns', command.trimRun)
    case 'addCeilingOpening':
      return addNew(job, 'ceilingOpenings', command.ceilingOpening)
    case 'setCeiling':
      return setRoom(job, command.roomId, { ceiling: command.ceiling })
    case 'setFloor':
      return setRoom(job, command.roomId, { floor: command.floor })
    case 'renameRoom':
      return setRoom(job, command.roomId, { name: command.name })
    case 'setRoom':
      return setRoom(job, command.roomId, command.change)
    case 'duplicateRooms':
      return duplicateRooms(job, command)
    case 'removeRecords':
      return removeTargets(job, command.targets)
    case 'addStorey':
      return addStorey(job, command.storey)
    case 'renameStorey':
      return renameStorey(job, command)
    case 'removeStorey':
      return removeStorey(job, command.storeyId)
    case 'putRecord':
      return succeed(withRecords(job, command.collection, [command.record]))
    case 'removeRecord':
      return removeTargets(job, [{ collection: command.collection, id: command.id }])
    case 'setHeader':
      return succeed({ ...job, header: { ...job.header, ...command.change } })
    case 'setBusiness':
      return succeed({ ...job, business: { ...job.business, ...command.change } })
    case 'setHouseRules':
      return succeed({ ...job, houseRules: { ...job.houseRules, ...command.change } })
  }
}

function setRoom(
  job: Job,
  roomId: Parameters<typeof findRoom>[1],
  change: Extract<SketchCommand, { kind: 'setRoom' }>['change'],
): Outcome<Job> {
  const room = findRoom(job, roomId)
  if (!room.ok) return room
  return succeed(withRecords(job, 'rooms', [{ ...room.value, ...change }]))
}

function addNew<Name extends 'trimRuns' | 'ceilingOpenings'>(
  job: Job,
  name: Name,
  record: Parameters<typeof withRecords<Name>>[2][number],
): Outcome<Job> {
  if (Object.hasOwn(job[name], record.id)) {
    return fail('duplicateId', `The id "${record.id}" is already used in ${name}.`, [record.id])
  }
  return succeed(withRecords(job, name, [record]))
}

/** Records that are new or changed must have the form the file asks for: a number that is none would be stored for good. */
function checkForms(diff: JobDiff): Outcome<null> {
  for (const name of singleNames) {
    const change = diff[name]
    const checked = change ? checkForm(singleSchemas[name], change[1], name) : succeed(null)
    if (!checked.ok) return checked
  }
  for (const name of collectionNames) {
    const part: CollectionDiff<{ readonly id: string }> | undefined = diff[name]
    for (const record of part ? [...part.added, ...part.updated.map(([, after]) => after)] : []) {
      const checked = checkForm(recordSchemas[name], record, `${name}.${record.id}`)
      if (!checked.ok) return checked
    }
  }
  return succeed(null)
}

function checkForm(schema: z.ZodType, record: unknown, place: string): Outcome<null> {
  const issue = z.safeEncode(schema, record as never).error?.issues[0]
  if (issue === undefined) return succeed(null)
  const path = [place, ...issue.path]
  return fail('notValid', formSentence({ ...issue, path }, { [place]: record }), [], pathText(path))
}
