import type { Estimate } from '../../../core/price/estimate-types.ts'
import { painterDays } from '../../../core/price/labour.ts'
import { lastPaidDate } from '../../../core/price/paid-plan.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { formatCents } from '../../../core/units/money.ts'
import { useJob } from '../../state/app.ts'
import { usePaidEstimate, usePaidPlan } from '../../state/planner.ts'
import type { Chain } from '../parts/chain.ts'

/** Working minutes, and the price before tax in cents. */
interface Figures {
  readonly minutes: number
  readonly cents: number
}

function houseFigures({ totals }: Estimate): Figures {
  return { minutes: totals.labourMinutes, cents: totals.beforeTax }
}

function roomFigures({ labour, rooms }: Estimate, room: Room): Figures {
  const minutes = labour.steps
    .filter((step) => step.roomId === room.id)
    .reduce((sum, step) => sum + step.minutes, 0)
  return { minutes, cents: rooms.find(({ roomId }) => roomId === room.id)?.cents ?? 0 }
}

/** What the walk brings so far: hours, price and days of the room and the house. */
export function Brings({ chain, room }: { readonly chain: Chain; readonly room: Room }) {
  const { job, estimate } = chain
  const house = houseFigures(estimate)
  const inRoom = roomFigures(estimate, room)
  const rows: readonly (readonly [string, (figures: Figures) => string])[] = [
    ['Hours', ({ minutes }) => (minutes / 60).toFixed(1)],
    ['Price before tax', ({ cents }) => dollars(cents)],
    ['Painter days', ({ minutes }) => painterDays(job, minutes).toFixed(1)],
  ]
  return (
    <section className="block brings" aria-label="What it brings">
      <table className="before-after">
        <thead>
          <tr>
            <th>
              <span className="unseen">What it brings</span>
            </th>
            <th className="number">Room</th>
            <th className="number">House</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([label, words]) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td className="number">{words(inRoom)}</td>
              <td className="number">{words(house)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <AsPlanned />
    </section>
  )
}

/** What the house comes to with the plan: who is on site has to set up, move and wait, which hours alone do not say. */
function AsPlanned() {
  const job = useJob()
  const plan = usePaidPlan()
  const { totals } = usePaidEstimate()
  const lastDay = plan === null ? null : lastPaidDate(plan)
  if (plan === null || lastDay === null) return null
  const by = plan.from === 'accepted' ? 'By the accepted plan' : 'By a first plan'
  return (
    <p className="quiet">
      {by}: last day {dateWords(lastDay, job.header.unitSystem)}, {dollars(totals.beforeTax)} with setting up
      and moving.
    </p>
  )
}

/** To the dollar: cents say nothing while the house is still walked through. */
function dollars(cents: number): string {
  return formatCents(Math.round(cents / 100) * 100).slice(0, -3)
}
