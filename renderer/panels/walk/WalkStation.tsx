import { capital } from '../../../core/words/text.ts'
import '../parts/station-page.css'
import './walk.css'
import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { roomSpan } from '../../../core/project/heights.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../../core/project/surface-ref.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import type { SurfaceQuantity, Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { conditionWords, severityWords } from '../../../core/specification/trade-words.ts'
import { squareMetres } from '../../../core/units/area.ts'
import { formatLength } from '../../../core/units/length.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { useJob, useView, viewStore } from '../../state/app.ts'
import { useEstimate, useSpecification, useTakeoff } from '../../state/derived.ts'
import { Choice } from '../parts/Choice.tsx'
import type { Chain } from '../parts/chain.ts'
import { Empty } from '../parts/Empty.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { areaText, lengthText } from '../parts/entries.ts'
import {
  ConditionForm,
  ConditionWhatIf,
  FormButtons,
  useConsequences,
  useFindingDraft,
} from '../parts/found/ConditionPaper.tsx'
import { conditionsOn, foundCounts, newCondition } from '../parts/found/condition-records.ts'
import { HoldPapers } from '../parts/HoldPapers.tsx'
import { KeptItems } from '../parts/KeptItems.tsx'
import { RoomNotices } from '../parts/RoomNotices.tsx'
import { Tick } from '../parts/Tick.tsx'
import { ExistingPaper } from './ExistingPaper.tsx'
import { SmallDamage } from './SmallDamage.tsx'
import { SurfaceList } from './SurfaceList.tsx'
import { SurveyPlan } from './SurveyPlan.tsx'

/** What is wrong and what is there: recorded surface by surface, with its consequences shown before it is kept. */
export function WalkStation() {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = useEstimate()
  const rooms = records(job.rooms)
  const viewRoom = useView((state) => state.roomId)
  const viewKey = useView((state) => state.surfaceKey)
  const chain = useMemo<Chain>(
    () => ({ job, takeoff, specification, estimate }),
    [job, takeoff, specification, estimate],
  )
  const room = rooms.find((each) => each.id === viewRoom) ?? rooms[0]
  if (room === undefined) {
    return (
      <section className="station-page walk">
        <Empty title="Nothing to walk through yet">
          <p>
            Draw the rooms at House first. Then go through them here: pick a wall, a ceiling, a window or a
            run of trim in the plan, say what is on it now, and write down what is wrong with it.
          </p>
        </Empty>
      </section>
    )
  }
  const surfaces = takeoff.surfaces.filter((each) => each.roomId === room.id)
  const surface = surfaces.find((each) => each.key === viewKey) ?? null
  return (
    <section className="station-page walk" aria-label="Walk">
      <div className="walk-panes">
        <WalkMap job={job} takeoff={takeoff} room={room} surfaces={surfaces} surface={surface} />
        <WalkPapers
          key={`${room.id}/${surface?.key ?? ''}`}
          chain={chain}
          room={room}
          surfaces={surfaces}
          surface={surface}
        />
      </div>
    </section>
  )
}

function WalkMap(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly room: Room
  readonly surfaces: readonly SurfaceQuantity[]
  readonly surface: SurfaceQuantity | null
}) {
  const { job, takeoff, room, surfaces, surface } = props
  const [isClose, setClose] = useState(false)
  const counts = useMemo(() => foundCounts(job, takeoff), [job, takeoff])
  const rooms = records(job.rooms)
  const onStorey = rooms.filter((each) => each.storeyId === room.storeyId)

  function pick(roomId: RoomId, ref: SurfaceRef) {
    viewStore.setState({ roomId, surfaceKey: nearestKey(takeoff, roomId, ref) })
  }

  return (
    <div className="walk-map">
      <div className="walk-map-head">
        <Choice
          label="Floor"
          options={records(job.storeys).map((each) => ({ id: each.id, label: each.name }))}
          chosen={room.storeyId}
          onChoose={(storeyId) => {
            const first = rooms.find((each) => each.storeyId === storeyId)
            if (first !== undefined) viewStore.setState({ roomId: first.id, surfaceKey: null })
          }}
        />
        <Choice
          label="Room"
          options={onStorey.map((each) => ({ id: each.id, label: each.name }))}
          chosen={room.id}
          onChoose={(roomId) => viewStore.setState({ roomId, surfaceKey: null })}
        />
      </div>
      <SurveyPlan
        job={job}
        rooms={onStorey}
        only={isClose ? room : null}
        roomId={room.id}
        pickedKey={surface?.key ?? null}
        counts={counts}
        onPick={pick}
      />
      <div className="walk-map-head">
        <Tick isOn={isClose} onChange={setClose}>
          Only {room.name}, closer
        </Tick>
        <span className="quiet">
          {formatLength(roomSpan(room, 'x'), job.header.unitSystem)} ×{' '}
          {formatLength(roomSpan(room, 'y'), job.header.unitSystem)}
        </span>
      </div>
      <SurfaceList
        job={job}
        surfaces={surfaces}
        pickedKey={surface?.key ?? null}
        counts={counts}
        onPick={(each) => viewStore.setState({ roomId: room.id, surfaceKey: each.key })}
      />
    </div>
  )
}

/** A pick in the plan means a wall as a whole; where a rail parts it, its upper part. An opening means a part it has. */
function nearestKey(takeoff: Takeoff, roomId: string, ref: SurfaceRef): string | null {
  const key = surfaceKey(ref)
  if (takeoff.byKey.has(key)) return key
  const like = takeoff.surfaces.find((each) => {
    if (each.roomId !== roomId) return false
    const { surface } = each
    if (ref.kind === 'wall' && surface.kind === 'wall') {
      return surface.wallId === ref.wallId && surface.zone !== 'lower'
    }
    return ref.kind === 'opening' && surface.kind === 'opening' && surface.openingId === ref.openingId
  })
  return like?.key ?? null
}

interface PapersProps {
  readonly chain: Chain
  readonly room: Room
  readonly surfaces: readonly SurfaceQuantity[]
  readonly surface: SurfaceQuantity | null
}

function WalkPapers({ chain, room, surfaces, surface }: PapersProps) {
  const { job, specification } = chain
  const now = useView((state) => state.host?.now.slice(0, 10) ?? null)
  const [draft, setDraft] = useState<Condition | null>(null)
  useFindingDraft(job, draft)
  const isNew = draft !== null && job.conditions[draft.id] === undefined
  return (
    <>
      <div className="walk-paper">
        {surface === null ? (
          <section className="block">
            <h2>{room.name}</h2>
            <p className="quiet">
              Pick a surface in the plan or in the list: a wall near its line, the ceiling in the middle of
              the room, a window or a door on the wall. Then say what is on it and what is wrong.
            </p>
          </section>
        ) : (
          <>
            <section className="block">
              <h2>
                {room.name}: {surfaceWords(job, surface.surface)}
              </h2>
            </section>
            <Found
              job={job}
              surface={surface}
              draft={draft}
              onDraft={setDraft}
              onNew={() => setDraft(newCondition(surface, now))}
            />
            {draft === null ? null : (
              <section className="block" aria-label={isNew ? 'New finding' : 'Finding'}>
                <h3>{isNew ? 'What was found' : 'Change what was found'}</h3>
                <ConditionForm job={job} surface={surface} draft={draft} isNew={isNew} onChange={setDraft} />
                <FormButtons
                  isNew={isNew}
                  onAccept={() => {
                    const action = `${isNew ? 'Record' : 'Change'}: ${conditionWords[draft.kind]}`
                    if (putRecord(action, 'conditions', draft)) setDraft(null)
                  }}
                  onCancel={() => setDraft(null)}
                />
              </section>
            )}
            <ExistingPaper job={job} surface={surface} />
          </>
        )}
        <KeptItems job={job} room={room} />
        <SmallDamage job={job} room={room} surfaces={surfaces} />
      </div>
      <aside className="walk-consequences" aria-label="Consequences">
        {draft === null ? null : <DraftConsequences chain={chain} draft={draft} />}
        <HoldPapers job={job} specification={specification} roomId={room.id} />
        <RoomNotices specification={specification} roomId={room.id} />
        {draft === null && specification.notices.length === 0 ? (
          <p className="quiet tab-pad">
            What follows from a finding is shown here before you record it: steps that appear, move or go,
            hours, products.
          </p>
        ) : null}
      </aside>
    </>
  )
}

function DraftConsequences({ chain, draft }: { readonly chain: Chain; readonly draft: Condition }) {
  const { before, after } = useConsequences(chain, draft)
  return (
    <section className="block" aria-label="If this is recorded" aria-live="polite">
      <h3>If this is recorded</h3>
      <ConditionWhatIf before={before} after={after} />
    </section>
  )
}

function Found(props: {
  readonly job: Job
  readonly surface: SurfaceQuantity
  readonly draft: Condition | null
  readonly onDraft: (condition: Condition | null) => void
  readonly onNew: () => void
}) {
  const { job, surface, draft } = props
  const found = conditionsOn(job, surface)
  return (
    <section className="block" aria-label="Found here">
      <h3>Found here</h3>
      {found.length === 0 ? <p className="quiet">Nothing written down for this surface.</p> : null}
      <ul className="condition-list">
        {found.map((condition) => (
          <li key={condition.id} className="condition-line">
            <span>
              <strong>{capital(conditionWords[condition.kind])}</strong>, {severityWords[condition.severity]}
              {amountsOf(job, condition)}
              {condition.on.level === 'room' ? <span className="quiet"> · in the whole room</span> : null}
              {condition.note === '' ? null : <div className="quiet">{condition.note}</div>}
            </span>
            <span className="button-row">
              <Button
                className="plain-button"
                aria-label={`Change: ${conditionWords[condition.kind]}`}
                onPress={() => props.onDraft(condition)}
              >
                Change
              </Button>
              <Button
                className="plain-button remove"
                aria-label={`Remove: ${conditionWords[condition.kind]}`}
                onPress={() =>
                  removeRecord(`Remove: ${conditionWords[condition.kind]}`, 'conditions', condition.id)
                }
              >
                Remove
              </Button>
            </span>
          </li>
        ))}
      </ul>
      {draft === null ? (
        <div className="button-row">
          <Button className="act-button" onPress={props.onNew}>
            Write down what is wrong
          </Button>
        </div>
      ) : null}
    </section>
  )
}

function amountsOf(job: Job, condition: Condition): string {
  const system = job.header.unitSystem
  const amounts = [
    lengthText(condition.length, system),
    condition.areaMm2 === null ? '' : areaText(squareMetres(condition.areaMm2 / 1e6), system),
    condition.count === null ? '' : `${condition.count} ×`,
  ].filter((text) => text !== '')
  return amounts.length === 0 ? '' : `, ${amounts.join(', ')}`
}
