import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react'
import { type Job, records } from '../../../../core/project/job.ts'
import type { JobPlan } from '../../../../core/schedule/plan-job.ts'
import { WholeJob } from './WholeJob.tsx'
import { pictureOfPlan } from './whole-job-picture.ts'

/** The whole job in the width there is. */
export function WholeJobSight(props: {
  readonly job: Job
  readonly plan: JobPlan
  readonly pickedKey: string | null
  readonly onPick: (taskKey: string) => void
  readonly corner: ReactNode
}) {
  const { job, plan } = props
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
        plan,
        records(job.crew).map(({ id }) => id),
      ),
    [plan, job.crew],
  )
  return (
    <div ref={frame} className="whole-sight">
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
