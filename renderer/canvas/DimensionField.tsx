import { useEffect, useRef, useState } from 'react'
import type { RoomId, WallId } from '../../core/project/sketch-records.ts'
import { findWall } from '../../core/project/walls.ts'
import { formatLength, lengthFromUnits } from '../../core/units/length.ts'
import { parseLength } from '../../core/units/parse-length.ts'
import { jobStore, useJob } from '../state/app.ts'
import { useDraft } from '../state/drafts.ts'
import { dimensionPlace } from './drawing/wall-dimension.ts'
import { useSketch } from './sketch-store.ts'
import { withWallLength } from './wall-length.ts'

/** A field over a wall's written length: type the exact one and Enter. */
export function DimensionField(props: {
  readonly roomId: RoomId
  readonly wallId: WallId
  readonly onDone: () => void
}) {
  const job = useJob()
  const view = useSketch((state) => state.view)
  const field = useRef<HTMLInputElement>(null)
  const room = job.rooms[props.roomId]
  const wall = room === undefined ? null : findWall(room, props.wallId)
  const system = job.header.unitSystem
  const [text, setText] = useState(() =>
    wall === null ? '' : formatLength(lengthFromUnits(wall.length), system),
  )
  const [sentence, setSentence] = useState('')
  useEffect(() => field.current?.select(), [])
  const asIs = wall === null ? text : formatLength(lengthFromUnits(wall.length), system)
  const release = useDraft(text === asIs ? null : { label: 'Exact length of the wall', text, take: commit })
  if (wall === null) return null
  const place = dimensionPlace(wall, view)

  /** True when nothing is left to take. */
  function commit(): boolean {
    const read = parseLength(text, system)
    if (!read.ok) return refuse(read.sentence)
    const next = withWallLength(job, props.roomId, props.wallId, read.length)
    if (!next.ok) return refuse(next.problem.sentence)
    if (text !== asIs) jobStore.perform('set a wall length', next)
    giveUp()
    return true
  }

  function refuse(why: string): false {
    setSentence(why)
    return false
  }

  function giveUp() {
    release()
    props.onDone()
  }

  return (
    <div className="dimension-field" style={{ left: place.middle.left - 65, top: place.middle.top - 18 }}>
      <input
        ref={field}
        aria-label="Exact length of the wall"
        value={text}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          event.stopPropagation()
          if (event.key === 'Enter') commit()
          if (event.key === 'Escape') giveUp()
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
