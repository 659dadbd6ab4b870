import type { Job } from '../project/job.ts'
import type { HouseWeeks } from './document-types.ts'
import { houseDays } from './house-day.ts'
import { housePicture } from './house-picture.ts'
import { printable } from './paper-size.ts'
import { mondayOf } from './site-days.ts'
import type { JudgedPlan } from './work-plan.ts'

/** Pictures on one page; of a longer job every second or third week is drawn. */
const most = 8
/** Up to so many stand below each other at full width. */
const mostInOneColumn = 3
/** Millimeters: between columns, of a caption, of the head of the page and its legend, and of a floor's name. */
const [between, caption, headAndLegend, floorName] = [4, 8, 40, 3.4]

/** The house as it stands on the first day of its weeks, for one page of either paper. */
export function houseWeeks(job: Job, plan: JudgedPlan): HouseWeeks {
  const days = houseDays(job, plan)
  const mondays = [...new Set(days.dates.map(mondayOf))]
  const apart = Math.ceil(mondays.length / most)
  const chosen = mondays.filter((_, index) => index % apart === 0)
  const dates = chosen.map((monday) => days.dates.find((date) => date >= monday) ?? monday)
  const columns = dates.length <= mostInOneColumn ? 1 : 2
  const rows = Math.max(1, Math.ceil(dates.length / columns))
  const width = (printable('a4').width - (columns - 1) * between) / columns
  const height = (printable('letter').height - headAndLegend) / rows - caption
  return {
    picture: housePicture(job, width, height, floorName),
    days: dates.map((date) => ({ date, rooms: days.on(date) })),
  }
}
