import type { Job } from '../../../core/project/job.ts'
import type { Pin } from '../../../core/project/progress-records.ts'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import { newId } from '../../state/new-id.ts'
import { dropChange, tryChange } from './trial.ts'

interface WantedPin {
  readonly taskId: string
  /** Moment on site. */
  readonly startsAt: string
  /** Undefined keeps the people of the pin that is there. */
  readonly people: readonly CrewMemberId[] | undefined
}

/** Tries a task at another time; a task has one pin, which is moved when there is one. */
export function tryPin(pins: readonly Pin[], { taskId, startsAt, people }: WantedPin, words: string): void {
  const old = pins.find((pin) => pin.passKey === taskId)
  const record: Pin = {
    id: old?.id ?? newId('pin'),
    passKey: taskId,
    startsAt,
    crewMemberIds: people ?? old?.crewMemberIds ?? [],
  }
  tryChange({
    key: `pin/${taskId}`,
    name: `Pin ${words}`,
    commands: [{ kind: 'putRecord', collection: 'pins', record }],
  })
}

/** Takes a pin away: one that is only being tried is dropped, one of the job is tried without. */
export function tryUnpin(job: Job, pins: readonly Pin[], taskId: string, words: string): void {
  const pin = pins.find((each) => each.passKey === taskId)
  if (pin === undefined) return
  if (job.pins[pin.id] === undefined) dropChange(`pin/${taskId}`)
  else {
    tryChange({
      key: `pin/${taskId}`,
      name: `Unpin ${words}`,
      commands: [{ kind: 'removeRecord', collection: 'pins', id: pin.id }],
    })
  }
}
