import '../parts/station-page.css'
import './walk.css'
import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { type WalkPiece, walkPieces } from '../../../core/specification/looked-at.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { useJob, useView, viewStore } from '../../state/app.ts'
import { useEstimate, useSpecification, useTakeoff } from '../../state/derived.ts'
import type { Chain } from '../parts/chain.ts'
import { Empty } from '../parts/Empty.tsx'
import { foundCounts } from '../parts/found/condition-records.ts'
import { HoldPapers } from '../parts/HoldPapers.tsx'
import { KeptItems } from '../parts/KeptItems.tsx'
import { drawFirstRoom } from '../parts/next-steps.ts'
import { PageTabs } from '../parts/PageTabs.tsx'
import { PhotoStrip } from '../parts/photos/PhotoStrip.tsx'
import { RoomNotices } from '../parts/RoomNotices.tsx'
import { Brings } from './Brings.tsx'
import { ExistingPaper } from './ExistingPaper.tsx'
import { RoomCheck } from './RoomCheck.tsx'
import { SmallDamage } from './SmallDamage.tsx'
import { SurfaceList } from './SurfaceList.tsx'
import { WalkMap } from './WalkMap.tsx'
import { DraftConsequences, WrongPaper } from './WrongPaper.tsx'
import { enterRoom, roomAt } from './walk-actions.ts'
import { listenForWalkKeys } from './walk-keys.ts'

/** What is wrong and what is there, surface by surface and room by room, with what it brings beside it. */
export function WalkStation() {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = useEstimate()
  const viewRoom = useView((state) => state.roomId)
  const viewKey = useView((state) => state.surfaceKey)
  const chain = useMemo<Chain>(
    () => ({ job, takeoff, specification, estimate }),
    [job, takeoff, specification, estimate],
  )
  const counts = useMemo(() => foundCounts(job, takeoff), [job, takeoff])
  const pieces = useMemo(() => walkPieces(job, takeoff.surfaces), [job, takeoff])
  const [tab, setTab] = useState<TabId>('wrong')
  const [begun, setBegun] = useState<{ readonly key: string; readonly draft: Condition } | null>(null)
  useEffect(listenForWalkKeys, [])
  const room = roomAt(job, viewRoom)
  if (room === undefined) return <NothingToWalk />
  const surfaces = takeoff.surfaces.filter((each) => each.roomId === room.id)
  const surface = surfaces.find((each) => each.key === viewKey) ?? null
  const here = pieces.get(room.id) ?? []
  const isLookedAt = here.every(({ state }) => state !== 'open')
  const pickedKey = surface?.key ?? null
  const draft = begun !== null && begun.key === pickedKey ? begun.draft : null
  const setDraft = (next: Condition | null) =>
    setBegun(next === null || pickedKey === null ? null : { key: pickedKey, draft: next })
  return (
    <section className="station-page walk" aria-label="Walk">
      <div className="walk-panes">
        <WalkMap
          job={job}
          takeoff={takeoff}
          room={room}
          pickedKey={pickedKey}
          counts={counts}
          onPicked={() => setTab('wrong')}
          isDone={isLookedAt && draft === null}
        />
        <WalkPapers
          chain={chain}
          room={room}
          surfaces={surfaces}
          surface={surface}
          pieces={here}
          draft={draft}
          onDraft={setDraft}
          tab={tab}
          onTab={setTab}
        />
        <aside className="walk-check" aria-label="The room">
          {draft === null ? (
            <>
              <Brings chain={chain} room={room} />
              <RoomCheck job={job} room={room} pieces={pieces} />
              <SurfaceList
                job={job}
                surfaces={surfaces}
                pickedKey={pickedKey}
                counts={counts}
                pieces={here}
                onPick={(each) => viewStore.setState({ roomId: room.id, surfaceKey: each.key })}
              />
            </>
          ) : (
            <DraftConsequences chain={chain} draft={draft} />
          )}
        </aside>
      </div>
    </section>
  )
}

function NothingToWalk() {
  return (
    <section className="station-page walk">
      <Empty title="Nothing to walk through yet" next={drawFirstRoom}>
        <p>
          Draw the rooms at House first. Then go through them here: pick a wall, a ceiling, a window or a run
          of trim in the plan, say what is on it now, and write down what is wrong with it.
        </p>
      </Empty>
    </section>
  )
}

const tabIds = ['wrong', 'there', 'stays', 'small', 'photos', 'decide'] as const
type TabId = (typeof tabIds)[number]

interface PapersProps {
  readonly chain: Chain
  readonly room: Room
  readonly surfaces: readonly SurfaceQuantity[]
  readonly surface: SurfaceQuantity | null
  readonly pieces: readonly WalkPiece[]
  readonly draft: Condition | null
  readonly onDraft: (draft: Condition | null) => void
  readonly tab: TabId
  readonly onTab: (tab: TabId) => void
}

function WalkPapers(props: PapersProps) {
  const { chain, room, surfaces, surface, pieces, tab, onTab } = props
  const { job, specification } = chain
  const key = `${room.id}/${surface?.key ?? ''}`
  const kept = records(job.keptItems).filter(({ roomId }) => roomId === room.id).length
  const photos = records(job.photos).filter(({ of }) => of.kind === 'room' && of.roomId === room.id).length
  const toDecide = [
    ...specification.holds.filter(({ roomId, cleared }) => roomId === room.id && cleared === null),
    ...specification.notices.filter(({ roomId, holdKey }) => roomId === room.id && holdKey === undefined),
  ].length
  return (
    <div className="walk-paper">
      <h2 className="walk-title">
        {room.name}
        {surface === null ? '' : `: ${surfaceWords(job, surface.surface)}`}
      </h2>
      <PageTabs
        label="Papers of the walk"
        open={tab}
        onOpen={(id) => onTab(tabIds.find((each) => each === id) ?? 'wrong')}
        tabs={[
          {
            id: 'wrong',
            title: 'Wrong',
            page: () =>
              surface === null ? (
                <PickFirst job={job} room={room} pieces={pieces} />
              ) : (
                <WrongPaper
                  key={key}
                  job={job}
                  room={room}
                  surface={surface}
                  pieces={pieces}
                  draft={props.draft}
                  onDraft={props.onDraft}
                />
              ),
          },
          {
            id: 'there',
            title: 'There now',
            page: () =>
              surface === null ? (
                <PickFirst job={job} room={room} pieces={pieces} />
              ) : (
                <ExistingPaper key={key} job={job} surface={surface} />
              ),
          },
          { id: 'stays', title: `Stays ${kept}`, page: () => <KeptItems job={job} room={room} /> },
          {
            id: 'small',
            title: 'Small damage',
            page: () => <SmallDamage key={room.id} job={job} room={room} surfaces={surfaces} />,
          },
          {
            id: 'photos',
            title: photos === 0 ? 'Photos' : `Photos ${photos}`,
            page: () => (
              <div className="tab-pad">
                <PhotoStrip
                  key={room.id}
                  job={job}
                  of={{ kind: 'room', roomId: room.id }}
                  subject={room.name}
                  stage="before"
                  takesPaste
                  invites
                />
              </div>
            ),
          },
          {
            id: 'decide',
            title: `To decide ${toDecide}`,
            page: () => (
              <>
                {toDecide > 0 ? null : (
                  <p className="quiet tab-pad">
                    Nothing to clear or to decide in {room.name}. What its rules ask you to look into first
                    stands here.
                  </p>
                )}
                <HoldPapers job={job} specification={specification} roomId={room.id} />
                <RoomNotices specification={specification} roomId={room.id} />
              </>
            ),
          },
        ]}
      />
    </div>
  )
}

function PickFirst(props: Pick<PapersProps, 'room' | 'pieces'> & { readonly job: Job }) {
  const { job, room, pieces } = props
  const first = pieces.find(({ state }) => state === 'open')?.surfaces[0]
  return (
    <div className="tab-pad">
      <p>
        Pick a surface in the plan or in the list: a wall near its line, the ceiling in the middle of the
        room, a window or a door on the wall. Then say what is on it and what is wrong.
      </p>
      {first === undefined ? null : (
        <Button className="act-button" onPress={() => enterRoom(job, room.id)}>
          Begin: {surfaceWords(job, first.surface)}
        </Button>
      )}
    </div>
  )
}
