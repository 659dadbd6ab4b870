import { useCallback, useMemo } from 'react'
import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../../core/project/surface-ref.ts'
import type { SurfaceClass } from '../../../core/project/vocabulary.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { houseColors } from '../../../core/work-order/house-colors.ts'
import { useBox } from '../parts/house-picture/use-box.ts'
import { chooseFinish, finishFor } from './finish-records.ts'
import { HouseInColors } from './HouseInColors.tsx'
import { WallsInColors } from './WallsInColors.tsx'

/** The house in its colors, the walls of the room in it, and the colors that what is picked can have. */
export function ColorPicture(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly roomId: RoomId | null
  readonly picked: SurfaceClass | null
  readonly onPick: (roomId: RoomId, surfaceClass: SurfaceClass) => void
}) {
  const { job, takeoff, roomId, picked, onPick } = props
  const colors = useMemo(() => houseColors(job, takeoff), [job, takeoff])
  const { frame, width, height } = useBox<HTMLDivElement>()
  const wallWidth = roomId === null ? 0 : Math.min(360, width * 0.42)

  // The same from picture to picture, so that rooms that did not change are not drawn again.
  const pick = useCallback(
    (room: RoomId, surface: SurfaceRef) => {
      const surfaceClass = classOf(takeoff, room, surface)
      if (surfaceClass !== null) onPick(room, surfaceClass)
    },
    [takeoff, onPick],
  )

  return (
    <section className="color-picture" aria-label="The house in its colors">
      <div ref={frame} className="color-frame in-paint">
        {width === 0 ? null : (
          <HouseInColors
            job={job}
            colors={colors}
            width={width - wallWidth}
            height={height}
            roomId={roomId}
            onPick={pick}
          />
        )}
        {roomId === null || width === 0 ? null : (
          <WallsInColors job={job} colors={colors} roomId={roomId} width={wallWidth} onPick={pick} />
        )}
      </div>
      {picked === null ? (
        <p className="color-legend quiet">
          {colors.marks.map(({ letter, name }) => `${letter} ${name}`).join(' · ')}
          {colors.marks.length === 0 ? 'No color is chosen yet: pick a surface in the picture.' : ''}
        </p>
      ) : (
        <Palette job={job} roomId={roomId} surfaceClass={picked} letters={lettersOf(colors.marks)} />
      )}
    </section>
  )
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
