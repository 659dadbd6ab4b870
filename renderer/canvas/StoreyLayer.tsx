import { Layer } from 'react-konva'
import { type Job, records } from '../../core/project/job.ts'
import { useView } from '../state/app.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { Grid } from './Grid.tsx'
import { OpeningDrawing } from './OpeningDrawing.tsx'
import { OpeningLetters } from './OpeningLetters.tsx'
import { RoomBelow, RoomDrawing, RoomFloor, WallSolid } from './RoomDrawing.tsx'
import { RoomTitle } from './RoomTitle.tsx'
import { partitions } from './sketch-input.ts'
import { useSketch } from './sketch-store.ts'
import { UnderlayDrawing } from './UnderlayDrawing.tsx'

interface StoreyLayerProps {
  /** The job as drafted. */
  readonly job: Job
  readonly colors: DrawingColors
  /** Rooms as they cannot be. */
  readonly refusedIds: readonly string[]
}

/** One storey on the sheet, from the ground up: grid, walls, floors, the storey below, outlines, openings, names. */
export function StoreyLayer({ job, colors, refusedIds }: StoreyLayerProps) {
  const storeyId = useView((state) => state.storeyId) ?? ''
  const selectedIds = useView((state) => state.selectedIds)
  const { view, size, litIds, showsGrid } = useSketch((state) => state)
  const system = job.header.unitSystem
  const thickness = partitions[system]
  const underlay = job.storeys[storeyId]?.underlay
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  const looks = rooms.map((room) => ({
    room,
    view,
    colors,
    system,
    isSelected: selectedIds.includes(room.id),
    litIds,
    selectedIds,
  }))
  return (
    <Layer listening={false}>
      {underlay === undefined ? null : <UnderlayDrawing underlay={underlay} view={view} />}
      {showsGrid ? <Grid view={view} size={size} colors={colors} system={system} /> : null}
      {rooms.map((room) => (
        <WallSolid key={room.id} room={room} view={view} thickness={thickness} color={colors.line} />
      ))}
      {looks.map(({ room, isSelected }) => (
        <RoomFloor
          key={room.id}
          room={room}
          view={view}
          colors={colors}
          isSelected={isSelected}
          litIds={litIds}
          isSheer={underlay?.isShown ?? false}
        />
      ))}
      {roomsBelow(job, storeyId).map((room) => (
        <RoomBelow key={room.id} room={room} view={view} colors={colors} />
      ))}
      {looks.map((look) => (
        <RoomDrawing key={look.room.id} {...look} isRefused={refusedIds.includes(look.room.id)} />
      ))}
      {records(job.openings).map((opening) => (
        <OpeningDrawing
          key={opening.id}
          job={job}
          opening={opening}
          view={view}
          colors={colors}
          storeyId={storeyId}
          thickness={thickness}
          isSelected={selectedIds.includes(opening.id)}
          isLit={litIds.includes(opening.id)}
        />
      ))}
      {records(job.openings).map((opening) => (
        <OpeningLetters key={opening.id} {...{ job, opening, view, colors, storeyId, selectedIds }} />
      ))}
      {looks.map(({ room, isSelected }) => (
        <RoomTitle
          key={room.id}
          room={room}
          view={view}
          colors={colors}
          system={system}
          isSelected={isSelected}
        />
      ))}
    </Layer>
  )
}

function roomsBelow(job: Job, storeyId: string) {
  const level = job.storeys[storeyId]?.level
  const below = records(job.storeys).find((storey) => storey.level === (level ?? 0) - 1)
  return records(job.rooms).filter((room) => room.storeyId === below?.id)
}
