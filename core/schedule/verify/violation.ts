import type { PersonId, ScheduleRoomId, TaskId } from '../model.ts'

/** A rule the plan breaks. `at` is the first minute (epoch) where it shows. */
export type Violation =
  | { readonly rule: 'everyTaskPlanned'; readonly task: TaskId }
  | { readonly rule: 'segmentsInOrder'; readonly task: TaskId }
  | { readonly rule: 'onGrid'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'workDone'; readonly task: TaskId; readonly planned: number; readonly needed: number }
  | { readonly rule: 'crewSize'; readonly task: TaskId; readonly people: readonly PersonId[] }
  | { readonly rule: 'skills'; readonly task: TaskId; readonly person: PersonId }
  | { readonly rule: 'personPresent'; readonly task: TaskId; readonly person: PersonId; readonly at: number }
  | {
      readonly rule: 'oneTaskPerPerson'
      readonly person: PersonId
      readonly tasks: readonly TaskId[]
      readonly at: number
    }
  | { readonly rule: 'pauses'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'notBefore'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'factsKept'; readonly task: TaskId }
  | {
      readonly rule: 'minimumWait'
      readonly from: TaskId
      readonly to: TaskId
      readonly wait: number
      readonly atLeast: number
    }
  | {
      readonly rule: 'maximumWait'
      readonly from: TaskId
      readonly to: TaskId
      readonly wait: number
      readonly atMost: number
    }
  | {
      readonly rule: 'resourceCapacity'
      readonly resource: string
      readonly at: number
      readonly used: number
    }
  | { readonly rule: 'roomCapacity'; readonly room: ScheduleRoomId; readonly at: number }
  | { readonly rule: 'noDustNearWet'; readonly dusty: TaskId; readonly wet: TaskId; readonly at: number }
  | {
      readonly rule: 'noFumesWhileSleeping'
      readonly task: TaskId
      readonly room: ScheduleRoomId
      readonly at: number
    }
  | { readonly rule: 'roomsOutOfUse'; readonly rooms: readonly ScheduleRoomId[]; readonly at: number }
  | {
      readonly rule: 'roomBackInTime'
      readonly task: TaskId
      readonly room: ScheduleRoomId
      readonly at: number
    }
  | { readonly rule: 'wayOutKeptOpen'; readonly behind: TaskId; readonly hall: TaskId; readonly at: number }
  | { readonly rule: 'hallsLast'; readonly task: TaskId; readonly hall: TaskId }
  | {
      readonly rule: 'choresAtDaysEnds'
      readonly task: TaskId
      readonly person: PersonId
      readonly at: number
    }
