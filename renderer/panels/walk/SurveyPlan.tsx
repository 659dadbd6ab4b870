import { useMemo, useState } from 'react'
import type { Point } from '../../../core/geometry/point.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../../core/project/surface-ref.ts'
import { unitsPerMillimetre } from '../../../core/units/length.ts'
import { type Pointed, pointedAt, surfaceOf } from './pointed.ts'
import { PointedShape, SurveyShapes } from './SurveyShapes.tsx'
import { boxOf, sidesOf } from './survey-places.ts'

interface SurveyPlanProps {
  readonly job: Job
  readonly rooms: readonly Room[]
  /** Only this room is drawn, as large as the paper allows. */
  readonly only: Room | null
  readonly roomId: string | null
  readonly pickedKey: string | null
  readonly counts: ReadonlyMap<string, number>
  /** Photos by room. */
  readonly photos: ReadonlyMap<string, number>
  readonly onPick: (roomId: RoomId, surface: SurfaceRef) => void
}

/** An opening is hit so many points of the screen beside its line. */
const reach = 8

/** The plan of a storey for pointing at what was looked at: rooms (their ceiling), walls and openings. */
export function SurveyPlan(props: SurveyPlanProps) {
  const { job, rooms, only, onPick } = props
  const drawn = useMemo(() => (only === null ? rooms : [only]), [rooms, only])
  const sides = useMemo(() => {
    const ids = new Set<string>(drawn.map(({ id }) => id))
    return records(job.openings).flatMap((opening) =>
      sidesOf(job, opening).flatMap((side) => (ids.has(side.room.id) ? [{ opening, side }] : [])),
    )
  }, [job, drawn])
  const [pointed, setPointed] = useState<Pointed | null>(null)
  const box = boxOf(drawn)
  const pixel = Math.max(box.width, box.height) / 520
  const under = (event: React.MouseEvent<SVGSVGElement>) => {
    const at = planPoint(event)
    return at === null ? null : pointedAt(drawn, sides, at, reach * pixel)
  }
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list beside the plan does the same by keyboard
    <svg
      className={`survey-plan${pointed === null ? '' : ` points-${pointed.kind}`}`}
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      role="img"
      aria-label="Plan for picking a wall, a ceiling or an opening with the pointer. The list beside it does the same by keyboard."
      onPointerMove={(event) => event.pointerType === 'mouse' && setPointed(under(event))}
      onPointerLeave={() => setPointed(null)}
      onClick={(event) => {
        const picked = under(event)
        if (picked === null) return
        onPick(picked.kind === 'opening' ? picked.side.room.id : picked.room.id, surfaceOf(picked))
      }}
    >
      <defs>
        <pattern id="picked-hatch" width={14 * pixel} height={14 * pixel} patternUnits="userSpaceOnUse">
          <path
            d={`M0 ${14 * pixel} L${14 * pixel} 0`}
            stroke="var(--act)"
            strokeWidth={1.4 * pixel}
            opacity="0.55"
          />
        </pattern>
      </defs>
      <SurveyShapes
        rooms={drawn}
        sides={sides}
        roomId={props.roomId}
        pickedKey={props.pickedKey}
        counts={props.counts}
        photos={props.photos}
        pixel={pixel}
      />
      {pointed === null ? null : <PointedShape pointed={pointed} pixel={pixel} />}
    </svg>
  )
}

/** Where on the plan a pointer is, in plan units; null while the picture is not shown. */
function planPoint({ currentTarget, clientX, clientY }: React.MouseEvent<SVGSVGElement>): Point | null {
  const shown = currentTarget.getScreenCTM()
  if (shown === null) return null
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(shown.inverse())
  return { x: x * unitsPerMillimetre, y: y * unitsPerMillimetre }
}
