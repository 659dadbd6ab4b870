import { useEffect, useRef, useState } from 'react'
import type { RoomId, WallId } from '../../core/project/sketch-records.ts'
import { findWall } from '../../core/project/walls.ts'
import { formatLength, lengthFromUnits } from '../../core/units/length.ts'
import { parseLength } from '../../core/units/parse-length.ts'
import { jobStore, useJob } from '../state/app.ts'
import { useSketch } from '../state/sketch-store.ts'
import { dimensionPlace } from './RoomDrawing.tsx'
import { withWallLength } from './wall-length.ts'

/** A field over a wall's written length: type the exact one and Enter. */
export function DimensionField(props: {
  readonly roomId: string
  readonly wallId: string
  readonly onDone: () => void
}) {
  const job = useJob()
  const view = useSketch((state) => state.view)
  const field = useRef<HTMLInputElement>(null)
  const room = job.rooms[props.roomId]
  const wall = room === undefined ? null : findWall(room, props.wallId as WallId)
  const system = job.header.unitSystem
  const [text, setText] = useState(() =>
    wall === null ? '' : formatLength(lengthFromUnits(wall.length), system),
  )
  const [sentence, setSentence] = useState('')
  useEffect(() => field.current?.select(), [])
  if (wall === null) return null
  const place = dimensionPlace(wall, view)

  function commit() {
    const read = parseLength(text, system)
    if (!read.ok) return setSentence(read.sentence)
    const next = withWallLength(job, props.roomId as RoomId, props.wallId as WallId, read.length)
    if (!next.ok) return setSentence(next.problem.sentence)
    jobStore.perform('set a wall length', next)
    props.onDone()
  }

  return (
    <div className="dimension-field" style={{ left: place.middle.x - 65, top: place.middle.y - 18 }}>
      <input
        ref={field}
        aria-label="Exact length of the wall"
        value={text}
        onChange={(event) => setText(event.target.value)}
        onBlur={props.onDone}
        onKeyDown={(event) => {
          event.stopPropagation()
          if (event.key === 'Enter') commit()
          if (event.key === 'Escape') props.onDone()
        }}
      />
      {sentence === '' ? null : (
        <div className="field-error" role="alert">
          {sentence}
        </div>
      )}
    </div>
  )
}
