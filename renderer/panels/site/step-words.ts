import type { PassProgress } from '../../../core/progress/pass-states.ts'
import type { Readiness } from '../../../core/progress/readiness.ts'
import type { StepProgress } from '../../../core/progress/step-states.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'

interface StateWords {
  /** For the look: what can be acted on, what waits, what is done, what must be made good. */
  readonly kind: 'todo' | 'ready' | 'wait' | 'started' | 'done' | 'skipped' | 'redo'
  readonly mark: string
  readonly text: string
}

/** How a step stands in a few words, with the moment that matters next. */
export function stateWords(
  { state }: StepProgress,
  ready: Readiness | undefined,
  system: LengthUnitSystem,
  nameOf: (stepKey: string) => string,
): StateWords {
  switch (state.kind) {
    case 'done':
      return { kind: 'done', mark: '✓', text: `done ${momentWords(state.at, system)}` }
    case 'skipped':
      return { kind: 'skipped', mark: '–', text: 'skipped' }
    case 'started':
      return { kind: 'started', mark: '◐', text: `under way since ${momentWords(state.at, system)}` }
    case 'redo':
      return { kind: 'redo', mark: '!', text: 'to be done again' }
    case 'todo':
      return openWords(ready, system, nameOf)
  }
}

/** The same of a whole pass. */
export function passWords(
  { state, ready }: PassProgress,
  system: LengthUnitSystem,
  nameOf: (stepKey: string) => string,
): StateWords {
  switch (state.kind) {
    case 'done':
      return { kind: 'done', mark: '✓', text: `done ${momentWords(state.at, system)}` }
    case 'skipped':
      return { kind: 'skipped', mark: '–', text: 'skipped' }
    case 'redo':
      return { kind: 'redo', mark: '!', text: 'something to be done again' }
    case 'underWay':
      return { kind: 'started', mark: '◐', text: `${state.settled} of ${state.total} steps done` }
    case 'todo':
      return openWords(ready, system, nameOf)
  }
}

function openWords(
  ready: Readiness | undefined,
  system: LengthUnitSystem,
  nameOf: (stepKey: string) => string,
): StateWords {
  switch (ready?.kind) {
    case 'waiting':
      return { kind: 'wait', mark: '◷', text: `drying: not before ${momentWords(ready.until, system)}` }
    case 'overdue':
      return {
        kind: 'redo',
        mark: '!',
        text: `should have started by ${momentWords(ready.since, system)}: repeat the step before it`,
      }
    case 'after': {
      const [first = '', ...rest] = ready.stepKeys
      const more = rest.length === 0 ? '' : ` and ${rest.length} more`
      return { kind: 'todo', mark: '', text: `after ${nameOf(first)}${more}` }
    }
    case 'ready':
      return {
        kind: 'ready',
        mark: '',
        text: ready.startBy === null ? 'can start' : `start by ${momentWords(ready.startBy, system)}`,
      }
    default:
      return { kind: 'todo', mark: '', text: '' }
  }
}
