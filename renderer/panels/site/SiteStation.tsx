import '../parts/station-page.css'
import './site.css'
import { useCallback, useDeferredValue, useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import { passStates } from '../../../core/progress/pass-states.ts'
import { readiness } from '../../../core/progress/readiness.ts'
import { jobProgress, type RoomProgress } from '../../../core/progress/room-progress.ts'
import { type StepProgress, stepStates } from '../../../core/progress/step-states.ts'
import { records } from '../../../core/project/job.ts'
import { mainRoomOf } from '../../../core/project/room-sets.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useJob, useView, viewStore } from '../../state/app.ts'
import { useEstimate, usePasses, useSpecification, useTakeoff } from '../../state/derived.ts'
import { useForecast } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import type { Chain } from '../parts/chain.ts'
import { Empty } from '../parts/Empty.tsx'
import { chooseFinishes, drawFirstRoom } from '../parts/next-steps.ts'
import { PageTabs } from '../parts/PageTabs.tsx'
import { PhotoStrip } from '../parts/photos/PhotoStrip.tsx'
import { useSameItems } from '../parts/use-same.ts'
import { EachRoom } from './EachRoom.tsx'
import { FoundTab } from './FoundTab.tsx'
import { PassesTab } from './PassesTab.tsx'
import { PunchTab } from './PunchTab.tsx'
import { RegisterTab } from './RegisterTab.tsx'
import { RoomList } from './RoomList.tsx'
import { SiteHead } from './SiteHead.tsx'
import { usePassNames } from './step-pass-names.ts'
import { TodayPane } from './TodayPane.tsx'

/** What got done: passes ticked room by room, what is drying, what is left, and when the house is free again. */
export function SiteStation() {
  const job = useJob()
  const specification = useSpecification()
  const { now } = useSiteNow()
  const nameOf = usePassNames()
  const [isToday, setToday] = useState(true)
  const viewRoom = useView((state) => state.roomId)
  const progress = useMemo(() => jobProgress(job, specification, now), [job, specification, now])
  const forecast = useForecast()
  const plan = acceptedPlan(job)?.plan ?? forecast.plan?.workPlan ?? null
  // While another plan is looked for, the rooms stay in the order of the last one.
  const orderedBy = useRef(plan)
  orderedBy.current = plan ?? orderedBy.current
  const order = orderedBy.current
  const rooms = useSameItems(
    useMemo(() => inPlanOrder(progress.rooms, order), [progress, order]),
    'roomId',
  )
  // A tick is drawn in its room first; the list of all rooms follows.
  const listed = useDeferredValue(rooms)
  const openRoom = useCallback((roomId: RoomId) => {
    viewStore.setState({ roomId })
    setToday(false)
  }, [])
  const viewSet = viewRoom === null ? null : mainRoomOf(job, viewRoom)
  const room = rooms.find((each) => each.roomId === viewSet) ?? rooms[0]
  if (room === undefined) {
    return (
      <section className="station-page site">
        <Empty
          title="Nothing to check off yet"
          next={records(job.rooms).length === 0 ? drawFirstRoom : chooseFinishes}
        >
          <p>
            Steps come from the sketch, what was found and the finishes. Once a surface has a finish to get,
            its passes are here to be checked off as they are done, with what is drying and what can start
            next.
          </p>
        </Empty>
      </section>
    )
  }

  return (
    <section className="station-page site" aria-label="Site">
      <SiteHead progress={progress} />
      <div className="site-panes">
        <div className="site-list">
          <Button
            className={isToday ? 'today-button today-open' : 'today-button'}
            aria-pressed={isToday}
            onPress={() => setToday(true)}
          >
            Today
          </Button>
          <RoomList
            rooms={listed}
            system={job.header.unitSystem}
            roomId={isToday ? null : room.roomId}
            onPick={openRoom}
          />
        </div>
        <div className="site-room">
          {isToday ? (
            <TodayPane
              plan={plan}
              forecast={forecast.plan?.workPlan ?? null}
              now={now}
              nameOf={nameOf}
              onPickRoom={openRoom}
            />
          ) : (
            <RoomLeaves room={room} now={now} nameOf={nameOf} />
          )}
        </div>
      </div>
    </section>
  )
}

/** The tabs of one room set: its passes, what was found, what was taken off, and what is to make good in the house. */
function RoomLeaves(props: {
  readonly room: RoomProgress
  readonly now: string
  readonly nameOf: (stepKey: string) => string
}) {
  const { room, now, nameOf } = props
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = useEstimate()
  const passes = usePasses()
  const states = useMemo(() => stepStates(job, specification), [job, specification])
  const chain = useMemo<Chain>(
    () => ({ job, takeoff, specification, estimate }),
    [job, takeoff, specification, estimate],
  )
  const roomIds = passes.sets.find(({ id }) => id === room.roomId)?.roomIds ?? [room.roomId]
  return (
    <PageTabs
      label={room.name}
      tabs={[
        {
          id: 'steps',
          title: 'Passes',
          page: () => (
            <RoomPasses key={room.roomId} roomId={room.roomId} states={states} now={now} nameOf={nameOf} />
          ),
        },
        {
          id: 'found',
          title: 'Found on site',
          page: () => (
            <EachRoom job={job} roomIds={roomIds}>
              {(roomId) => <FoundTab key={roomId} chain={chain} roomId={roomId} now={now} />}
            </EachRoom>
          ),
        },
        {
          id: 'register',
          title: 'Taken off',
          page: () => (
            <EachRoom job={job} roomIds={roomIds}>
              {(roomId) => (
                <RegisterTab
                  job={job}
                  roomId={roomId}
                  steps={[...states.values()].filter(({ step }) => step.roomId === roomId)}
                />
              )}
            </EachRoom>
          ),
        },
        {
          id: 'photos',
          title: 'Photos',
          page: () => (
            <EachRoom job={job} roomIds={roomIds}>
              {(roomId) => (
                <div className="tab-pad">
                  <PhotoStrip
                    key={roomId}
                    job={job}
                    of={{ kind: 'room', roomId }}
                    subject={job.rooms[roomId]?.name ?? roomId}
                    stage="after"
                    takesPaste
                    invites={roomIds.length === 1}
                  />
                </div>
              )}
            </EachRoom>
          ),
        },
        {
          id: 'punch',
          title: 'Punch list',
          page: () => <PunchTab job={job} specification={specification} now={now} />,
        },
      ]}
      aside={<h2 className="tabs-sum">{room.name}</h2>}
    />
  )
}

function RoomPasses(props: {
  readonly roomId: RoomId
  readonly states: ReadonlyMap<string, StepProgress>
  readonly now: string
  readonly nameOf: (stepKey: string) => string
}) {
  const { roomId, states, now, nameOf } = props
  const job = useJob()
  const specification = useSpecification()
  const passes = usePasses()
  const own = useMemo(
    () =>
      passStates(
        job,
        passes.passes.filter(({ roomSetId }) => roomSetId === roomId),
        specification,
        states,
        now,
      ),
    [job, passes, roomId, specification, states, now],
  )
  const ready = useMemo(() => readiness(job, specification, states, now), [job, specification, states, now])
  return <PassesTab passes={own} states={states} ready={ready} now={now} nameOf={nameOf} />
}

/** Rooms in the order in which the plan begins them; those it does not have come last. */
function inPlanOrder(rooms: readonly RoomProgress[], plan: WorkPlan | null): readonly RoomProgress[] {
  const starts = new Map<string, string>()
  for (const task of plan?.tasks ?? []) {
    const known = starts.get(task.roomId)
    if (known === undefined || task.startsAt < known) starts.set(task.roomId, task.startsAt)
  }
  const startOf = (room: RoomProgress) => starts.get(room.roomId) ?? '9'
  return rooms.toSorted((one, other) => {
    const [first, second] = [startOf(one), startOf(other)]
    return first < second ? -1 : first > second ? 1 : 0
  })
}
