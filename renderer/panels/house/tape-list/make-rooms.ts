import { present } from '../../../../core/lists/lists.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { StoreyId } from '../../../../core/project/sketch-records.ts'
import { applyCommand } from '../../../../core/sketch/apply-command.ts'
import { planTapeRooms, type TapePlan } from '../../../../core/sketch/tape-list/plan-rooms.ts'
import { readTapeList } from '../../../../core/sketch/tape-list/read-line.ts'
import type { TapeLine, TapeSentence } from '../../../../core/sketch/tape-list/tape-records.ts'
import { jobStore, viewStore } from '../../../state/app.ts'
import { showTapeList, writeTapeText } from '../../../state/tape-list.ts'
import { showStorey } from '../storey-view.ts'

/** One line with everything that is said of it. */
export interface SeenLine {
  readonly line: TapeLine
  readonly sentences: readonly TapeSentence[]
  readonly isStopped: boolean
}

/** What is understood of a list before anything is made. */
export interface TapeReading {
  readonly job: Job
  readonly plan: TapePlan
  /** Lines that are not empty. */
  readonly lines: readonly SeenLine[]
  readonly roomCount: number
  readonly stopCount: number
}

export function readAndPlan(
  job: Job,
  text: string,
  storeyId: StoreyId | null,
  freshName: (prefix: string) => string,
): TapeReading {
  const read = readTapeList(text, job.header.unitSystem)
  const shown = storeyId ?? present(Object.values(job.storeys)[0]).id
  const plan = planTapeRooms(job, read, shown, freshName)
  const lines = read
    .filter((line) => line.text.trim() !== '')
    .map((line): SeenLine => {
      const sentences = [...line.sentences, ...(plan.sentences.get(line.number) ?? [])]
      return { line, sentences, isStopped: sentences.some(({ weight }) => weight === 'stop') }
    })
  return {
    job,
    plan,
    lines,
    roomCount: plan.drawn.rooms.length,
    stopCount: lines.filter(({ isStopped }) => isStopped).length,
  }
}

/** Makes the rooms as one action. Lines that have to be mended stay in the list, below their headings. */
export function makeRooms(reading: TapeReading): void {
  const { drawn, joins } = reading.plan
  const [first] = drawn.rooms
  if (first === undefined) return
  const action = drawn.rooms.length === 1 ? `make ${first.name}` : `make ${drawn.rooms.length} rooms`
  if (!jobStore.perform(action, applyCommand(reading.job, { kind: 'addDrawn', drawn, joins }))) return
  writeTapeText(linesLeft(reading.lines))
  if (reading.stopCount === 0) showTapeList(false)
  showStorey(first.storeyId)
  viewStore.setState({ selectedIds: [], roomId: first.id })
}

function linesLeft(lines: readonly SeenLine[]): string {
  const isHeading = ({ line }: SeenLine) => line.storey !== null || line.ceilings !== null
  const kept = lines.filter((seen) => seen.isStopped || isHeading(seen))
  const last = kept.findLastIndex(({ isStopped }) => isStopped)
  return kept
    .slice(0, last + 1)
    .map(({ line }) => line.text)
    .join('\n')
}
