import type { Job } from '../project/job.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import { calendarFile } from './calendar-file.ts'
import { readyWords } from './family-page.ts'
import type { FamilyPage } from './family-types.ts'

/** The family page as a calendar: a whole-day event for each time a room is out of use. Nothing internal is in it. */
export function familyCalendar(job: Job, family: FamilyPage, madeAt: SiteMoment): string {
  const { id, title, timeZone, unitSystem } = job.header
  return calendarFile(
    { name: `${title}: rooms in work`, timeZone, madeAt },
    family.rooms.flatMap((room) =>
      room.stretches.map(({ from, to }, index) => ({
        uid: `${id}.family.${room.roomSetId}.${index + 1}`,
        summary: `${room.name}: painters at work`,
        description: [
          ...(index < room.stretches.length - 1 ? [] : [`Ready again: ${readyWords(room, unitSystem)}.`]),
          `Take out before: ${room.moveBefore.join('; ')}.`,
        ].join('\n'),
        location: '',
        when: { kind: 'days', from, to } as const,
        cancelled: false,
      })),
    ),
  )
}
