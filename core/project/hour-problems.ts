import type { Job } from './job.ts'
import { type Problem, problem } from './problem.ts'
import { weekdays } from './shop-records.ts'

interface Hours {
  readonly from: string
  readonly to: string
}

/** Hours that end before they begin, hours of one day that overlap, and a time zone nobody knows. */
export function hourProblems(job: Job): readonly Problem[] {
  return [
    ...zoneProblems(job.header.timeZone),
    ...windowProblems([job.houseRules.siteHours], 'houseRules.siteHours', 'the site hours', []),
    ...Object.values(job.crew).flatMap((member, index) => {
      const place = `crew[${index}]`
      const whose = `the hours of ${member.name}`
      return [
        ...weekdays.flatMap((day) =>
          windowProblems(member.week[day], `${place}.week.${day}`, `${whose} on ${day}`, [member.id]),
        ),
        ...windowProblems(member.breaks, `${place}.breaks`, `the breaks of ${member.name}`, [member.id]),
        ...member.partDays.flatMap((day, dayIndex) =>
          windowProblems([day], `${place}.partDays[${dayIndex}]`, `${whose} on ${day.date}`, [member.id]),
        ),
      ]
    }),
  ]
}

/** Times of day are written with two digits throughout, so that they compare as text. */
function windowProblems(
  windows: readonly Hours[],
  place: string,
  what: string,
  ids: readonly string[],
): readonly Problem[] {
  return windows.flatMap((hours, index) => {
    if (hours.from >= hours.to) {
      return [
        problem(
          'notValid',
          `At ${place}: ${what} end at ${hours.to}, before they begin at ${hours.from}.`,
          ids,
          place,
        ),
      ]
    }
    const clash = windows.slice(0, index).find((other) => hours.from < other.to && other.from < hours.to)
    if (clash === undefined) return []
    const both = `${clash.from}-${clash.to} and ${hours.from}-${hours.to}`
    return [problem('notValid', `At ${place}: ${what} overlap (${both}).`, ids, place)]
  })
}

function zoneProblems(timeZone: string): readonly Problem[] {
  try {
    new Intl.DateTimeFormat('en', { timeZone })
    return []
  } catch {
    const place = 'header.timeZone'
    return [
      problem('notValid', `At ${place}: "${timeZone}" is not a time zone, like America/Chicago.`, [], place),
    ]
  }
}
