import type { Point } from '../../core/geometry/point.ts'
import { type Job, records } from '../../core/project/job.ts'
import type { StoreyId } from '../../core/project/sketch-records.ts'
import { applyCommands } from '../../core/sketch/apply-command.ts'
import { choiceOfMove, type MoveChoice, type WayToMove } from '../../core/sketch/linked-rooms.ts'
import { lengthFromUnits } from '../../core/units/length.ts'
import { jobStore, viewStore } from '../state/app.ts'
import { newId } from '../state/new-id.ts'
import { snapGrid } from './drawing/draw-grid.ts'
import { partitions } from './partitions.ts'
import { sketchStore } from './sketch-store.ts'
import type { DrawnAction, Input, Surroundings, ToolStep } from './tools/tool.ts'
import { tools } from './tools/tools.ts'
import { fitView, isSameView, type View } from './view.ts'

/** How near in screen pixels the pointer must come. */
const reach = 9

/** Stands in while no storey is shown. No record has it, so that nothing can be drawn there. */
const noStorey = '' as StoreyId

/** What is around the pointer just now. */
export function surroundings(job: Job): Surroundings {
  const { storeyId, selectedIds } = viewStore.getState()
  const { view, showsGrid } = sketchStore.getState()
  const system = job.header.unitSystem
  return {
    job,
    storeyId: storeyId ?? noStorey,
    selectedIds,
    tolerance: reach / view.scale,
    grid: showsGrid ? snapGrid(view, system) : null,
    partition: partitions[system],
    newId,
  }
}

/** Gives an input to the chosen tool and does what comes of it. */
export function handle(input: Input): void {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const { tool, gesture } = sketchStore.getState()
  take(tools[tool].step(gesture, input, surroundings(job)), job)
}

function take(step: ToolStep, job: Job): void {
  sketchStore.setState({ gesture: step.gesture })
  if (step.refusal !== undefined) sketchStore.setState({ refusal: { ...step.refusal, ways: [] } })
  if (step.select !== undefined) viewStore.setState(selection(job, step.select))
  if (step.action !== undefined) perform(step.action, job)
}

/** One gesture, one action; what cannot be is said at its place and changes nothing. */
function perform(action: DrawnAction, job: Job): void {
  const outcome = applyCommands(job, action.commands)
  if (!outcome.ok) {
    const choice = moveChoice(job, action.commands)
    const { sentence } = choice ?? outcome.problem
    sketchStore.setState({ refusal: { sentence, at: action.at, ways: choice?.ways ?? [] } })
    return
  }
  jobStore.perform(action.name, outcome)
  const drawn = action.commands.find(({ kind }) => kind === 'addRoom')
  sketchStore.setState({ refusal: null, namingId: drawn?.kind === 'addRoom' ? drawn.id : null })
  if (action.select !== null) viewStore.setState(selection(outcome.value, action.select))
}

/** What can be chosen where the commands only move rooms, and pull apart what these share with others. */
export function moveChoice(job: Job, commands: DrawnAction['commands']): MoveChoice | null {
  const [move] = commands
  return commands.length === 1 && move?.kind === 'moveRooms'
    ? choiceOfMove(job, move, () => newId('door'))
    : null
}

/** Goes the way that was chosen, as one action. */
export function goWay(way: WayToMove, at: Point): void {
  const { job } = jobStore.store.getState()
  if (job !== null) perform({ name: 'move rooms', commands: way.commands, select: way.roomIds, at }, job)
}

function selection(job: Job, selectedIds: readonly string[]) {
  const rooms = selectedIds.flatMap((id) => job.rooms[id]?.id ?? [])
  const opening = job.openings[selectedIds[0] ?? '']
  return { selectedIds, roomId: rooms[0] ?? opening?.roomId ?? null, surfaceKey: null }
}

let fitted: { readonly view: View; readonly job: Job } | null = null

/** Nobody has moved the sheet or drawn on it since it was fitted, so that it may be fitted again to a new window. */
export function showsWholeStorey(): boolean {
  return sketchStore.getState().view === fitted?.view && jobStore.store.getState().job === fitted.job
}

/** Shows the whole storey. */
export function fitStorey(): void {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const { storeyId } = viewStore.getState()
  const points = records(job.rooms)
    .filter((room) => room.storeyId === storeyId)
    .flatMap((room) => room.corners)
  const { view: before, size } = sketchStore.getState()
  const fitting = fitView(points, size)
  const view = isSameView(fitting, before) ? before : fitting
  fitted = { view, job }
  sketchStore.setState({ view })
}

/** Moves the selected rooms on the plan, as one action. */
export function moveSelectedRooms(dx: number, dy: number): void {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const roomIds = surroundings(job).selectedIds.flatMap((id) => job.rooms[id]?.id ?? [])
  const [first] = roomIds
  if (first === undefined) return
  perform(
    {
      name: 'move rooms',
      commands: [{ kind: 'moveRooms', roomIds, dx, dy }],
      select: null,
      at: job.rooms[first]?.corners[0] ?? { x: 0, y: 0 },
    },
    job,
  )
}

/** Moves what is selected by whole grid steps, as one action. */
export function nudge(dx: number, dy: number): void {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const around = surroundings(job)
  const step = around.grid ?? around.partition
  const opening = job.openings[around.selectedIds[0] ?? '']
  if (around.selectedIds.some((id) => job.rooms[id] !== undefined)) {
    moveSelectedRooms(dx * step, dy * step)
  } else if (opening !== undefined) {
    const offset = lengthFromUnits(Math.max(0, opening.offset + (dx + dy) * step))
    const place = job.rooms[opening.roomId]?.corners.find((corner) => corner.wallId === opening.wallId)
    perform(
      {
        name: 'slide an opening',
        commands: [{ kind: 'moveOpening', openingId: opening.id, offset }],
        select: null,
        at: place ?? { x: 0, y: 0 },
      },
      job,
    )
  }
}
