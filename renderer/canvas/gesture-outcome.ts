import type { Job } from '../../core/project/job.ts'
import { type Outcome, succeed } from '../../core/project/problem.ts'
import { applyCommands } from '../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../core/sketch/commands.ts'
import { useJob } from '../state/app.ts'
import { moveChoice, surroundings } from './sketch-input.ts'
import { sketchStore, useSketch } from './sketch-store.ts'
import type { Gesture, ToolName } from './tools/tool.ts'
import { tools } from './tools/tools.ts'

let last: {
  readonly job: Job
  readonly tool: ToolName
  readonly gesture: Gesture
  readonly draft: Outcome<Job>
} | null = null

/** The job as it would be if the gesture ended now, or why it cannot be; worked out once for all who look. */
export function useGestureOutcome(): Outcome<Job> {
  const job = useJob()
  const gesture = useSketch((state) => state.gesture)
  const { tool } = sketchStore.getState()
  if (last?.job !== job || last.tool !== tool || last.gesture !== gesture) {
    const commands = tools[tool].draft(gesture, surroundings(job))
    last = { job, tool, gesture, draft: draftOf(job, commands) }
  }
  return last.draft
}

/** Where letting go asks how it is meant, the draft goes the first way. */
function draftOf(job: Job, commands: readonly SketchCommand[]): Outcome<Job> {
  if (commands.length === 0) return succeed(job)
  const draft = applyCommands(job, commands)
  const way = draft.ok ? undefined : moveChoice(job, commands)?.ways[0]
  return way === undefined ? draft : applyCommands(job, way.commands)
}

/** The drafted job where it can be, else the job as it stands. */
export function useJobAfterGesture(): Job {
  const job = useJob()
  const draft = useGestureOutcome()
  return draft.ok ? draft.value : job
}
