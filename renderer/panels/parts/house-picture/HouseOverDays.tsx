import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../../../core/project/job.ts'
import type { RoomId } from '../../../../core/project/sketch-records.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import type { JudgedPlan } from '../../../../core/work-order/work-plan.ts'
import { DayLegend, HouseOnDay } from './HouseOnDay.tsx'
import { houseDaysOf } from './house-days-of.ts'

/** Milliseconds a day is shown while the days are played; longer where the system asks for less motion. */
const beat = { usual: 420, calm: 1200 }

/** The house over the days of the job: a slider, and the days played one after another. */
export function HouseOverDays(props: {
  readonly job: Job
  readonly plan: JudgedPlan
  /** The day it opens on. */
  readonly today: string
  readonly onPick: (setId: RoomId) => void
}) {
  const { job, plan, today } = props
  const system = job.header.unitSystem
  const days = houseDaysOf(job, plan)
  const { dates } = days
  const last = dates.length - 1
  const [chosen, setChosen] = useState<string | null>(null)
  const [isPlaying, setPlaying] = useState(false)
  const at = placeOf(dates, chosen ?? today)
  const date = dates[at] ?? today
  const rooms = days.on(date)
  useEffect(() => {
    if (!isPlaying) return
    const isCalm = window.matchMedia('(prefers-reduced-motion: reduce)').matches
    const timer = window.setTimeout(
      () => {
        if (at >= last) setPlaying(false)
        else setChosen(dates[at + 1] ?? null)
      },
      isCalm ? beat.calm : beat.usual,
    )
    return () => window.clearTimeout(timer)
  }, [isPlaying, at, last, dates])

  function play() {
    if (!isPlaying && at >= last) setChosen(dates[0] ?? null)
    setPlaying(!isPlaying)
  }

  return (
    <section className="house-days" aria-label="The house on a day">
      <div className="house-slider">
        <Button className="plain-button" onPress={play}>
          {isPlaying ? 'Stop' : 'Play the days'}
        </Button>
        <input
          type="range"
          aria-label="Day"
          aria-valuetext={dateWords(date, system)}
          min={0}
          max={last}
          value={at}
          onChange={(event) => {
            setPlaying(false)
            setChosen(dates[Number(event.target.value)] ?? null)
          }}
        />
        <p className="house-date" aria-live={isPlaying ? 'off' : 'polite'}>
          <strong>{dateWords(date, system)}</strong>
          <span className="quiet">
            {' '}
            day {at + 1} of {dates.length}
          </span>
        </p>
      </div>
      <HouseOnDay className="house-frame" job={job} date={date} rooms={rooms} onPick={props.onPick} />
      <DayLegend rooms={rooms} />
    </section>
  )
}

/** Of a date on the slider; at its ends what lies before and after. */
function placeOf(dates: readonly string[], date: string): number {
  if (date <= (dates[0] ?? '')) return 0
  const found = dates.indexOf(date)
  return found < 0 ? dates.length - 1 : found
}
