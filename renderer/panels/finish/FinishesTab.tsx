import { useCallback, useEffect, useRef, useState } from 'react'
import { Button, ListBox, ListBoxItem } from 'react-aria-components'
import { groupedBy } from '../../../core/lists/lists.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { Scope } from '../../../core/project/survey-records.ts'
import { type SurfaceClass, sheens, surfaceClasses } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity, Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { productClassWords, sheenWords, surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { capital } from '../../../core/words/text.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { useView, viewStore } from '../../state/app.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { sheenNotes } from '../parts/glossary-words.ts'
import { isSameScope, recordAt, type ScopeTarget } from '../parts/scope-choices.ts'
import { Tick } from '../parts/Tick.tsx'
import { useDrawnCount } from '../parts/use-drawn-count.ts'
import { useSame } from '../parts/use-same.ts'
import { depthWords, finishClasses } from '../parts/words.ts'
import { ColorPicture } from './ColorPicture.tsx'
import { ColourList } from './ColourList.tsx'
import { chooseFinish, finishFor, inheritFinish } from './finish-records.ts'

/** What every surface becomes: the house's defaults, a room's own, and single surfaces set apart. */
export function FinishesTab({ job, takeoff }: { readonly job: Job; readonly takeoff: Takeoff }) {
  const viewRoom = useView((state) => state.roomId)
  const roomId = job.rooms[viewRoom ?? '']?.id ?? null
  const surfaces =
    roomId === null ? takeoff.surfaces : takeoff.surfaces.filter((each) => each.roomId === roomId)
  const [showsHouse, setShowsHouse] = useState(true)
  const [picked, setPicked] = useState<SurfaceClass | null>(null)
  const pickedHere = surfaces.some(({ surfaceClass }) => surfaceClass === picked) ? picked : null
  const pick = useCallback((pickedRoom: RoomId, surfaceClass: SurfaceClass) => {
    viewStore.setState({ roomId: pickedRoom })
    setPicked(surfaceClass)
  }, [])
  const present = surfaceClasses.filter((each) => surfaces.some((surface) => surface.surfaceClass === each))
  return (
    <div className="finish-panes">
      <PlaceList job={job} roomId={roomId} />
      <div className="pane finish-main">
        <Tick isOn={showsHouse} onChange={setShowsHouse}>
          House in its colors
        </Tick>
        {showsHouse ? (
          <ColorPicture job={job} takeoff={takeoff} roomId={roomId} picked={pickedHere} onPick={pick} />
        ) : null}
        <div className="scroll">
          <table className="pick-table finish-table">
            <thead>
              <tr>
                <th scope="col">Surface</th>
                <th scope="col">Painted</th>
                <th scope="col">Color</th>
                <th scope="col">Sheen</th>
                <th scope="col">Product</th>
                <th scope="col">Set at</th>
              </tr>
            </thead>
            <tbody>
              {present.map((surfaceClass) => (
                <ClassRows
                  key={surfaceClass}
                  job={job}
                  roomId={roomId}
                  surfaceClass={surfaceClass}
                  surfaces={surfaces.filter((each) => each.surfaceClass === surfaceClass)}
                  isPicked={pickedHere === surfaceClass}
                />
              ))}
            </tbody>
          </table>
        </div>
      </div>
      <aside className="pane pane-side" aria-label="Colors">
        <ColourList job={job} />
      </aside>
    </div>
  )
}

interface Place {
  readonly id: string
  readonly name: string
  readonly said: string
}

/** The whole house, and its rooms with what is said of them alone. */
function PlaceList({ job, roomId }: { readonly job: Job; readonly roomId: RoomId | null }) {
  const places = useSame(placesOf(job))
  const drawn = useDrawnCount(places.length, Math.ceil(window.innerHeight / leastLine))
  return (
    <ListBox
      aria-label="The house and its rooms"
      className="place-list"
      items={places.slice(0, drawn)}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[roomId ?? house.id]}
      onSelectionChange={(keys) => {
        const [key] = keys === 'all' ? [] : [...keys]
        if (key !== undefined) viewStore.setState({ roomId: job.rooms[String(key)]?.id ?? null })
      }}
    >
      {({ id, name, said }) => (
        <ListBoxItem id={id} textValue={name} className="place-line">
          {id === house.id ? <strong>{name}</strong> : <span>{name}</span>}
          <span className="quiet">{said}</span>
        </ListBoxItem>
      )}
    </ListBox>
  )
}

/** Height of a line of the list, in pixels, where it is lowest. */
const leastLine = 28

const house: Place = { id: 'house', name: 'The whole house', said: 'defaults' }

function placesOf(job: Job): readonly Place[] {
  const own = groupedBy(records(job.finishes), ({ scope }) => (scope.level === 'room' ? scope.roomId : null))
  const rooms = records(job.rooms).map(({ id, name }) => {
    const count = own.get(id)?.length ?? 0
    return { id, name, said: count === 0 ? '' : `${count} own` }
  })
  return [house, ...rooms]
}

function ClassRows(props: {
  readonly job: Job
  readonly roomId: RoomId | null
  readonly surfaceClass: SurfaceClass
  readonly surfaces: readonly SurfaceQuantity[]
  readonly isPicked: boolean
}) {
  const { job, roomId, surfaceClass, surfaces } = props
  const apart = surfaces.filter(
    (each) => recordAt(job.finishes, { level: 'surface', surface: each.surface }) !== null,
  )
  const [isOpen, setOpen] = useState(apart.length > 0)
  const scope: Scope =
    roomId === null ? { level: 'house', surfaceClass } : { level: 'room', roomId, surfaceClass }
  const name = (
    <>
      {roomId === null ? null : (
        <Button
          className="fold-button"
          aria-expanded={isOpen}
          aria-label={`${surfaceClassWords[surfaceClass]}: single surfaces`}
          onPress={() => setOpen(!isOpen)}
        >
          <span className={isOpen ? 'fold fold-open' : 'fold'} />
        </Button>
      )}
      {surfaceClassWords[surfaceClass]}
      {apart.length === 0 || isOpen ? null : <span className="quiet"> · {apart.length} set apart</span>}
    </>
  )
  return (
    <>
      <FinishRow
        job={job}
        label={surfaceClassWords[surfaceClass]}
        name={name}
        scope={scope}
        place={{ surfaceClass, roomId, surface: null }}
        isHead
        isPicked={props.isPicked}
      />
      {isOpen && roomId !== null
        ? surfaces.map((each) => (
            <FinishRow
              key={each.key}
              job={job}
              label={surfaceWords(job, each.surface)}
              name={capital(surfaceWords(job, each.surface))}
              scope={{ level: 'surface', surface: each.surface }}
              place={{ surfaceClass, roomId, surface: each.surface }}
            />
          ))
        : null}
    </>
  )
}

function FinishRow(props: {
  readonly job: Job
  readonly label: string
  readonly name: React.ReactNode
  readonly scope: Scope
  readonly place: ScopeTarget
  readonly isHead?: boolean
  readonly isPicked?: boolean
}) {
  const row = useRef<HTMLTableRowElement>(null)
  const isPicked = props.isPicked === true
  useEffect(() => {
    if (isPicked) row.current?.scrollIntoView({ block: 'nearest' })
  }, [isPicked])
  const { job, label, scope, place } = props
  const { finish, from } = finishFor(job, place)
  const isOwn = from !== null && isSameScope(from, scope)
  const choose = (changes: Parameters<typeof chooseFinish>[3]) => chooseFinish(job, scope, place, changes)
  const colours = records(job.colours).map((colour) => ({
    id: colour.id,
    label: colour.name,
    note: depthWords[colour.depth],
  }))
  return (
    <tr
      ref={row}
      className={`${props.isHead ? 'head-row' : 'surface-row'}${isOwn ? ' own-row' : ''}${isPicked ? ' picked-row' : ''}`}
    >
      <td>{props.name}</td>
      <td>
        <Tick isOn={finish.paint} onChange={(paint) => choose({ paint })}>
          <span className="unseen">{label}: </span>
          {finish.paint ? 'yes' : 'left as it is'}
        </Tick>
      </td>
      <td>
        <span className="colour-name">
          <span
            className="colour-chip"
            style={{ background: job.colours[finish.colourId ?? '']?.shown ?? 'transparent' }}
          />
          <Choice
            label={`${label}: color`}
            isBare
            options={colours}
            chosen={finish.colourId}
            unchosen="No color yet"
            isDisabled={!finish.paint && from !== null}
            onChoose={(id) => choose({ colourId: id })}
          />
        </span>
      </td>
      <td>
        <Choice
          label={`${label}: sheen`}
          isBare
          options={optionsOf(sheens, sheenWords, sheenNotes)}
          chosen={finish.sheen}
          isDisabled={!finish.paint}
          onChoose={(sheen) => choose({ sheen })}
        />
      </td>
      <td>
        <Choice
          label={`${label}: product`}
          isBare
          options={optionsOf(finishClasses, productClassWords)}
          chosen={finish.productClass}
          isDisabled={!finish.paint}
          onChoose={(productClass) => choose({ productClass })}
        />
      </td>
      <td>
        {isOwn ? (
          scope.level === 'house' ? (
            <span className="quiet">here</span>
          ) : (
            <Button
              className="plain-button"
              aria-label={`${label}: here · reset to the default`}
              onPress={() => inheritFinish(job, scope)}
            >
              here · reset
            </Button>
          )
        ) : (
          <span className="quiet">{from === null ? 'not yet' : `the ${from.level}`}</span>
        )}
      </td>
    </tr>
  )
}
