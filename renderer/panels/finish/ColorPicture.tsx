import { useCallback, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { schemesOf, withScheme } from '../../../core/agreement/color-schemes.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../../core/project/surface-ref.ts'
import type { SurfaceClass } from '../../../core/project/vocabulary.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { type HouseColors, houseColors } from '../../../core/work-order/house-colors.ts'
import { lastAnswer } from '../../state/last-answer.ts'
import { useBox } from '../parts/house-picture/use-box.ts'
import { chooseFinish, finishFor } from './finish-records.ts'
import { HouseInColors } from './HouseInColors.tsx'
import { SchemeBar } from './SchemeBar.tsx'
import { WallsInColors } from './WallsInColors.tsx'

/** Of the line over each of two drawings, in pixels. */
const captionHeight = 40

const colorsOf = lastAnswer(houseColors)

interface PictureProps {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly roomId: RoomId | null
  readonly picked: SurfaceClass | null
  readonly onPick: (roomId: RoomId, surfaceClass: SurfaceClass) => void
}

/** The house in its colors, a scheme beside it, and the colors that what is picked can have. */
export function ColorPicture({ job, takeoff, roomId, picked, onPick }: PictureProps) {
  const colors = colorsOf(job, takeoff)
  const [besideId, setBesideId] = useState<string | null>(null)
  const beside = schemesOf(job).find(({ id }) => id === besideId) ?? null
  const other = useMemo(() => (beside === null ? null : withScheme(job, beside)), [job, beside])
  const { frame, width, height } = useBox<HTMLDivElement>()

  // The same from picture to picture, so that rooms that did not change are not drawn again.
  const pick = useCallback(
    (room: RoomId, surface: SurfaceRef) => {
      const surfaceClass = classOf(takeoff, room, surface)
      if (surfaceClass !== null) onPick(room, surfaceClass)
    },
    [takeoff, onPick],
  )
  const place = { roomId, height, onPick: pick }

  return (
    <section className="color-picture" aria-label="The house in its colors">
      <SchemeBar job={job} beside={beside} onBeside={setBesideId} />
      <div ref={frame} className="color-frame in-paint">
        {width === 0 ? null : other === null || beside === null ? (
          <ColorDrawings {...place} job={job} colors={colors} width={width} />
        ) : (
          <>
            <Side name="Now" job={job} colors={colors} width={width / 2} {...place} />
            {other.ok ? (
              <SchemeSide
                name={beside.name}
                job={other.value}
                takeoff={takeoff}
                width={width / 2}
                {...place}
              />
            ) : (
              <p className="quiet">{other.problem.sentence}</p>
            )}
          </>
        )}
      </div>
      {picked === null && beside !== null ? null : picked === null ? (
        <p className="color-legend quiet">
          {legendOf(colors) || 'No color is chosen yet: pick a surface in the picture.'}
        </p>
      ) : (
        <Palette job={job} roomId={roomId} surfaceClass={picked} letters={lettersOf(colors.marks)} />
      )}
    </section>
  )
}

interface DrawingsProps {
  readonly job: Job
  readonly colors: HouseColors
  readonly roomId: RoomId | null
  readonly width: number
  readonly height: number
  readonly onPick: (roomId: RoomId, surface: SurfaceRef) => void
}

/** The house from above, and the walls of the room in it. */
function ColorDrawings({ job, colors, roomId, width, height, onPick }: DrawingsProps) {
  const wallWidth = roomId === null ? 0 : Math.min(360, width * 0.42)
  return (
    <>
      <HouseInColors
        job={job}
        colors={colors}
        width={width - wallWidth}
        height={height}
        roomId={roomId}
        onPick={onPick}
      />
      {roomId === null ? null : (
        <WallsInColors
          job={job}
          colors={colors}
          roomId={roomId}
          width={wallWidth}
          height={height}
          onPick={onPick}
        />
      )}
    </>
  )
}

/** One of two sets of colors: the house, or the walls of the room that is open. */
function Side({ name, ...drawn }: DrawingsProps & { readonly name: string }) {
  const { roomId, colors } = drawn
  return (
    <figure className="scheme-side" aria-label={name}>
      <figcaption>
        <strong>{name}</strong> <span className="quiet">{legendOf(colors)}</span>
      </figcaption>
      {roomId === null ? (
        <HouseInColors {...drawn} height={drawn.height - captionHeight} />
      ) : (
        <WallsInColors {...drawn} height={drawn.height - captionHeight} roomId={roomId} />
      )}
    </figure>
  )
}

function SchemeSide({
  takeoff,
  ...side
}: Omit<Parameters<typeof Side>[0], 'colors'> & { readonly takeoff: Takeoff }) {
  const colors = useMemo(() => houseColors(side.job, takeoff), [side.job, takeoff])
  return <Side {...side} colors={colors} />
}

function legendOf({ marks }: HouseColors): string {
  return marks.map(({ letter, name }) => `${letter} ${name}`).join(' · ')
}

function lettersOf(marks: readonly { readonly name: string; readonly letter: string }[]) {
  return new Map(marks.map(({ name, letter }) => [name, letter]))
}

/** Every color of the job for what is picked. */
function Palette(props: {
  readonly job: Job
  readonly roomId: RoomId | null
  readonly surfaceClass: SurfaceClass
  readonly letters: ReadonlyMap<string, string>
}) {
  const { job, roomId, surfaceClass, letters } = props
  const place = { surfaceClass, roomId, surface: null }
  const { finish } = finishFor(job, place)
  const where = roomId === null ? 'The whole house' : (job.rooms[roomId]?.name ?? roomId)
  const what = `${where}: ${surfaceClassWords[surfaceClass].toLowerCase()}`
  return (
    <div className="color-palette" role="toolbar" aria-label={`Color of ${what}`}>
      <strong>{what}</strong>
      {records(job.colours).map(({ id, name, shown }) => (
        <Button
          key={id}
          className="plain-button"
          aria-pressed={finish.paint && finish.colourId === id}
          onPress={() =>
            chooseFinish(
              job,
              roomId === null ? { level: 'house', surfaceClass } : { level: 'room', roomId, surfaceClass },
              place,
              { colourId: id },
            )
          }
        >
          <span className="colour-chip" style={{ background: shown }} />
          {letters.has(name) ? `${letters.get(name)} ` : ''}
          {name}
        </Button>
      ))}
    </div>
  )
}

/** The class a surface is painted with; of an opening without such a part, that of its casing or whatever it has. */
function classOf({ surfaces, byKey }: Takeoff, roomId: RoomId, surface: SurfaceRef): SurfaceClass | null {
  const found = byKey.get(surfaceKey(surface))
  if (found !== undefined) return found.surfaceClass
  if (surface.kind !== 'opening') return null
  const like = surfaces.find(
    (each) =>
      each.roomId === roomId &&
      each.surface.kind === 'opening' &&
      each.surface.openingId === surface.openingId,
  )
  return like?.surfaceClass ?? null
}
