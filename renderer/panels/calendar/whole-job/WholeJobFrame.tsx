import type { ReactNode } from 'react'
import { type Job, records } from '../../../../core/project/job.ts'
import { momentsIn } from '../../../../core/time/site-moment.ts'
import { lastAnswer } from '../../../state/last-answer.ts'
import type { FoundPlan } from '../../../state/planner-messages.ts'
import { useBox } from '../../parts/house-picture/use-box.ts'
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
  const { frame, width } = useBox<HTMLDivElement>()
  const picture = pictureFor(found, job.crew, timeZone)
  return (
    <div ref={frame} className="whole-frame">
      {width === 0 ? null : (
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
      )}
    </div>
  )
}

const pictureFor = lastAnswer((found: FoundPlan, crew: Job['crew'], timeZone: string) =>
  pictureOfPlan(
    found.workPlan,
    records(crew).map(({ id }) => id),
    elsewhereIn(found, timeZone),
  ),
)

/** When people of the plan are on other jobs, as moments of this one. */
function elsewhereIn({ problem }: FoundPlan, timeZone: string): readonly PictureElsewhere[] {
  const moment = momentsIn(timeZone)
  return problem.people.flatMap(({ id, busy }) =>
    busy.map(({ start, end }) => ({ crewMemberId: id, from: moment(start), to: moment(end) })),
  )
}
