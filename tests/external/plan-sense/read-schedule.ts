import { z } from 'zod'

/** A task as a plan's file has it, in minutes since 1970 of the wall clock on site. */
export interface ReadTask {
  readonly set: string
  readonly operations: readonly string[]
  readonly people: readonly string[]
  readonly segments: readonly { readonly from: number; readonly to: number }[]
  readonly dryUntil: number | null
}

export interface ReadSchedule {
  readonly tasks: readonly ReadTask[]
}

/** Operations that leave a film that shows where it was broken off. */
export const coatingOperations: ReadonlySet<string> = new Set([
  'coat',
  'prime',
  'spotPrime',
  'seal',
  'blockStain',
  'skim',
  'tintedPrime',
])

const fileForm = z.object({
  tasks: z.array(
    z.object({
      roomSetId: z.string(),
      stepKeys: z.array(z.string()),
      crewMemberIds: z.array(z.string()),
      segments: z.array(z.object({ startsAt: z.string(), endsAt: z.string() })),
      dryUntil: z.string().nullable(),
    }),
  ),
})

export function readSchedule(text: string): ReadSchedule {
  const minutes = (moment: string): number => Date.parse(`${moment.slice(0, 16)}:00Z`) / 60_000
  return {
    tasks: fileForm.parse(JSON.parse(text)).tasks.map((task) => ({
      set: task.roomSetId,
      operations: task.stepKeys.map((key) => key.split('/')[2] ?? ''),
      people: task.crewMemberIds,
      segments: task.segments
        .map(({ startsAt, endsAt }) => ({ from: minutes(startsAt), to: minutes(endsAt) }))
        .sort((one, other) => one.from - other.from),
      dryUntil: task.dryUntil === null ? null : minutes(task.dryUntil),
    })),
  }
}
