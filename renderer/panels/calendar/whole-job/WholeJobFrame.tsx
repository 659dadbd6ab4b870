import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react'
import { type Job, records } from '../../../../core/project/job.ts'
import { momentsIn } from '../../../../core/time/site-moment.ts'
import type { FoundPlan } from '../../../state/planner-messages.ts'
import type { PictureElsewhere } from './picture.ts'
import { WholeJob } from './WholeJob.tsx'
import { pictureOfPlan } from './whole-job-picture.ts'

/** The whole job in the width there is. */
export function WholeJobFrame(props: {
  readonly job: Job
  readonly found: FoundPlan
  readonly pickedKey: string | null
  readonly onPick: (taskKey: string) => void
  readonly corner: ReactNode
}) {
  const { job, found } = props
  const { timeZone } = job.header
  const frame = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(1000)
  useEffect(() => {
    const element = frame.current
    if (element === null) return
    const watch = new ResizeObserver(() => setWidth(element.clientWidth))
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  const picture = useMemo(
    () =>
      pictureOfPlan(
        found.workPlan,
        records(job.crew).map(({ id }) => id),
        elsewhereIn(found, timeZone),
      ),
    [found, job.crew, timeZone],
  )
  return (
    <div ref={frame} className="whole-frame">
      <WholeJob
        picture={picture}
        width={width}
        system={job.header.unitSystem}
        roomName={(id) => job.rooms[id]?.name ?? id}
        personName={(id) => job.crew[id]?.name ?? id}
        pickedKey={props.pickedKey}
        onPick={props.onPick}
        corner={props.corner}
      />
    </div>
  )
}

/** When people of the plan are on other jobs, as moments of this one. */
function elsewhereIn({ problem }: FoundPlan, timeZone: string): readonly PictureElsewhere[] {
  const moment = momentsIn(timeZone)
  return problem.people.flatMap(({ id, busy }) =>
    busy.map(({ start, end }) => ({ crewMemberId: id, from: moment(start), to: moment(end) })),
  )
}
