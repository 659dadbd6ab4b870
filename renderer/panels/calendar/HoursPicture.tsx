import type { ReactNode } from 'react'
import type { Job } from '../../../core/project/job.ts'
import { finishOf } from '../../../core/schedule/model.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { MoveVerdict } from './MoveVerdict.tsx'
import { PlanDrawing } from './PlanDrawing.tsx'
import type { PlanPicture } from './plan-picture.ts'
import { outOfUseWords } from './verdict-words.ts'

/** Where a task is dragged to, and the plan it takes it from: better ones wait until it lets go. */
export interface HeldTask {
  readonly taskId: string
  readonly start: number
  readonly found: FoundPlan
}

/** The plan by the hour, with what the move being dragged would mean. */
export function HoursPicture(props: {
  readonly job: Job
  readonly found: FoundPlan
  readonly picture: PlanPicture & {
    readonly drawing: NonNullable<PlanPicture['drawing']>
    readonly look: NonNullable<PlanPicture['look']>
  }
  readonly held: HeldTask | null
  /** Instant of now. */
  readonly now: number
  readonly corner: ReactNode
  readonly onPick: (taskId: string | null) => void
  readonly onMove: (taskId: string, start: number, isDone: boolean) => void
  readonly onGiveUp: (draggedId: string | null) => void
}) {
  const { job, found, held } = props
  const { local, momentOf, words, drawing, tried, look } = props.picture
  const system = job.header.unitSystem
  return (
    <div className="plan-view">
      <PlanDrawing
        problem={found.problem}
        local={local}
        axis={drawing.axis}
        lanes={drawing.lanes}
        corner={props.corner}
        system={system}
        look={look}
        noteOf={({ outOfUse }) =>
          outOfUse === null ? '' : outOfUseWords(momentOf(outOfUse.from), momentOf(outOfUse.to), system)
        }
        now={instantWithin(found, props.now)}
        onPick={props.onPick}
        triedStarts={tried}
        canMove={(id) => isOpenTask(found, id)}
        onMove={props.onMove}
        onGiveUp={props.onGiveUp}
      />
      {held === null ? null : <MoveVerdict {...held} job={job} titleOf={words.title} momentOf={momentOf} />}
    </div>
  )
}

function isOpenTask(found: FoundPlan, id: string): boolean {
  const kind = found.problem.tasks.find((task) => task.id === id)?.state.kind
  return kind === 'open' || kind === 'pinned'
}

function instantWithin(found: FoundPlan, now: number): number | null {
  const first = Math.min(...found.plan.tasks.map((task) => task.start))
  return now >= first && now <= finishOf(found.plan) ? now : null
}
