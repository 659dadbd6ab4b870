import { z } from 'zod'
import { relaxations } from '../../schedule/job/planning-site.ts'
import { atLeastZero, day, momentOnSite, outputHead, wholeCents } from './output-parts.ts'

export const scheduleSchema = z.strictObject({
  ...outputHead('coatwright-schedule'),
  timeZone: z.string(),
  startsOn: day,
  finishesOn: day,
  tasks: z.array(
    z.strictObject({
      taskKey: z.string(),
      passKey: z
        .string()
        .optional()
        .describe('The pass; a coat that goes on the next day is a task on each day.'),
      name: z.string().optional(),
      roomSetId: z.string().optional().describe('Main room of the rooms worked and given back as one.'),
      roomId: z.string(),
      stepKeys: z.array(z.string()),
      startsAt: momentOnSite,
      endsAt: momentOnSite,
      segments: z.array(z.strictObject({ startsAt: momentOnSite, endsAt: momentOnSite })),
      crewMemberIds: z.array(z.string()),
      dryUntil: momentOnSite
        .nullable()
        .optional()
        .describe('What the task leaves wet is touch dry then, day and night counted; null for dry work.'),
    }),
  ),
  roomsOutOfUse: z
    .array(z.strictObject({ roomId: z.string(), from: momentOnSite, to: momentOnSite }))
    .optional()
    .describe(
      'First and last day, drying included, on which the household does without a room set; it is given back between two stretches.',
    ),
  verdict: z
    .strictObject({
      rulesBroken: z
        .int()
        .min(0)
        .describe('Counted by a judge that shares no code with the search; 0 in every plan that is written.'),
      earliestFinishOn: day
        .nullable()
        .describe('No plan of these tasks can finish before this day; null where that was not worked out.'),
      daysFromBestAtMost: z
        .int()
        .min(0)
        .nullable()
        .describe('Days from earliestFinishOn to finishesOn; 0 means that the last day is proved best.'),
      leastCostCents: wholeCents
        .nullable()
        .describe('No plan of these tasks can cost less; null where not worked out.'),
      costCents: z
        .strictObject({
          pay: wholeCents.describe('Attendance of everybody times the wage with burden.'),
          siteDays: wholeCents.describe('Working days from the first to the last on site.'),
          roomDays: wholeCents.describe('Days on which the household does without a room.'),
          handOvers: wholeCents.describe(
            'Each time a room goes over to somebody else, or a coat goes on after a night.',
          ),
          total: wholeCents.describe('The sum of the four.'),
        })
        .describe('What plans are compared by; days and hand-overs by the rules of the job.'),
      roomDaysOutOfUse: z.int().min(0),
      paidMinutes: atLeastZero.describe(
        'Attendance of everybody, setting up and leaving counted, breaks not.',
      ),
      promisesMoved: z
        .int()
        .min(0)
        .describe('Tasks of an accepted plan that this one moves to another day or to others.'),
      notKept: z
        .array(
          z.strictObject({
            what: z.enum(relaxations),
            id: z.string(),
          }),
        )
        .describe('What could not be asked of the plan as it was written down: a pin, a room, or a task.'),
    })
    .optional()
    .describe('How good the plan is known to be.'),
})
