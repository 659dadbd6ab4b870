import { epochMinutes } from '../../time/instant.ts'
import type { Decoder } from '../fitting/decoder.ts'
import type { FixedPiece, Piece } from '../fitting/fixed.ts'
import { openTask } from '../fitting/numbers.ts'
import type { PersonId, Plan, PlannedTask, TaskState } from '../model.ts'

/** The plan that was put together last, in instants. */
export function planFrom(decoder: Decoder): Plan {
  const { net } = decoder
  const { axis, problem } = net
  const instant = (tick: number) => epochMinutes(axis.origin + tick * axis.grid)
  const fixed = new Map(net.fixed.map((each) => [each.task, each]))
  const tasks = problem.tasks.map(({ id, state }, task): PlannedTask => {
    if (state.kind === 'done') return factOf(id, state)
    const each = fixed.get(task) as FixedPiece
    const pieces: readonly Piece[] = net.kind[task] === openTask ? decoder.piecesOf(task) : each.pieces
    const segments = pieces.map(({ from, to }) => ({ start: instant(from), end: instant(to) }))
    const isStarted = state.kind === 'started'
    const end = instant(decoder.end[task] as number)
    const start = isStarted ? state.start : instant(decoder.start[task] as number)
    return { task: id, segments, start, end, people: peopleOf(decoder, decoder.team[task] as number) }
  })
  return { tasks }
}

function factOf(task: string, { start, end, people }: Extract<TaskState, { kind: 'done' }>): PlannedTask {
  return { task, segments: start < end ? [{ start, end }] : [], start, end, people }
}

function peopleOf({ net }: Decoder, team: number): readonly PersonId[] {
  return net.problem.people.flatMap(({ id }, person) => ((team >> person) & 1 ? [id] : []))
}
