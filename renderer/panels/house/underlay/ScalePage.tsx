import { type KeyboardEvent, type PointerEvent, useState } from 'react'
import { Button, Heading } from 'react-aria-components'
import type { Storey, Underlay } from '../../../../core/project/sketch-records.ts'
import { movedBy, type PicturePoint, scaledByLine, shiftStep } from '../../../../core/sketch/underlay.ts'
import type { Length } from '../../../../core/units/length.ts'
import { jobStore, useJob } from '../../../state/app.ts'
import { usePicture } from '../../../state/pictures.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { lengthEntry, lengthText, orNothing } from '../../parts/entries.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { Tick } from '../../parts/Tick.tsx'
import { ShiftButtons } from '../ShiftButtons.tsx'
import { setUnderlay } from './put-underlay.ts'

const strengths = [
  { id: 'faint', label: 'Faint' },
  { id: 'middle', label: 'Middle' },
  { id: 'strong', label: 'Strong' },
] as const

type Line = readonly [PicturePoint, PicturePoint]

/** The picture with a line on it whose length is known: that scales it, and turns it square. */
export function ScalePage(props: {
  readonly storey: Storey
  readonly underlay: Underlay
  readonly onDone: () => void
}) {
  const { storey, underlay, onDone } = props
  const system = useJob().header.unitSystem
  const [line, setLine] = useState<Line>(() => firstLine(underlay))
  const [length, setLength] = useState<Length | null>(null)
  const [isSquared, setSquared] = useState(true)
  const step = shiftStep(system)
  const put = (deed: string, next: Underlay) => setUnderlay(deed, storey, next)
  const shift = (x: number, y: number) => put('Move the picture', movedBy(underlay, x * step, y * step))
  function scale() {
    if (length === null) return
    const scaled = scaledByLine(underlay, line, length, isSquared)
    if (scaled.ok) put('Scale the picture', scaled.value)
    else jobStore.refuse(scaled.problem)
  }
  return (
    <>
      <Heading slot="title">Picture under {storey.name}</Heading>
      <p className="quiet">
        Set the two points on the ends of a wall you know: click near one to bring it there, or move it with
        the arrow keys (Shift for larger steps). Then say how long the wall is.
      </p>
      <PictureWithLine underlay={underlay} line={line} onLine={setLine} />
      <div className="button-row underlay-line">
        <EntryField
          label="Length between the points"
          shown={lengthText(length, system)}
          read={orNothing<Length>(lengthEntry(system))}
          onCommit={setLength}
        />
        <Tick isOn={isSquared} onChange={setSquared}>
          Turn it so that this line is level or upright
        </Tick>
        <Button className="act-button" isDisabled={length === null} onPress={scale}>
          Scale it
        </Button>
      </div>
      <div className="button-row underlay-line">
        <OneOf
          label="How strong it shows"
          options={strengths}
          chosen={underlay.strength}
          onChoose={(strength) => put('Fade the picture', { ...underlay, strength })}
        />
        <div className="button-row underlay-shift">
          <span className="label">Move it by {lengthText(step, system)}</span>
          <ShiftButtons what="the picture" onShift={shift} />
        </div>
      </div>
      <div className="button-row sheet-end">
        <Button className="act-button" onPress={onDone}>
          Done
        </Button>
        <Button
          className="plain-button remove"
          onPress={() => {
            setUnderlay('Take the picture away', storey, null)
            onDone()
          }}
        >
          Take it away
        </Button>
      </div>
    </>
  )
}

function firstLine({ width, height }: Underlay): Line {
  return [
    { across: width * 0.25, down: height * 0.5 },
    { across: width * 0.75, down: height * 0.5 },
  ]
}

function PictureWithLine(props: {
  readonly underlay: Underlay
  readonly line: Line
  readonly onLine: (line: Line) => void
}) {
  const { underlay, line, onLine } = props
  const read = usePicture(underlay.picture)
  const { width, height } = underlay
  if (read === null) return <p className="quiet">Being read …</p>
  if (!read.ok) return <p>{read.problem.sentence}</p>
  const [from, to] = line
  function press(event: PointerEvent<HTMLDivElement>) {
    const box = event.currentTarget.getBoundingClientRect()
    const at = within(underlay, {
      across: ((event.clientX - box.left) / box.width) * width,
      down: ((event.clientY - box.top) / box.height) * height,
    })
    onLine(distance(at, from) < distance(at, to) ? [at, to] : [from, at])
  }
  const moved = (point: PicturePoint, across: number, down: number) =>
    within(underlay, { across: point.across + across, down: point.down + down })
  return (
    <div
      className="underlay-picture"
      style={{ aspectRatio: `${width} / ${height}`, width: `min(100%, ${(42 * width) / height}vh)` }}
      onPointerDown={press}
    >
      <img src={read.value} alt="" draggable={false} />
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <line x1={from.across} y1={from.down} x2={to.across} y2={to.down} />
      </svg>
      <PointMark
        label="First point"
        point={from}
        underlay={underlay}
        onMove={(across, down) => onLine([moved(from, across, down), to])}
      />
      <PointMark
        label="Second point"
        point={to}
        underlay={underlay}
        onMove={(across, down) => onLine([from, moved(to, across, down)])}
      />
    </div>
  )
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

function PointMark(props: {
  readonly label: string
  readonly point: PicturePoint
  readonly underlay: Underlay
  readonly onMove: (across: number, down: number) => void
}) {
  const { point, underlay } = props
  function key(event: KeyboardEvent) {
    const arrow = arrows[event.key]
    if (arrow === undefined) return
    event.preventDefault()
    const pixels = event.shiftKey ? 20 : 1
    props.onMove(arrow[0] * pixels, arrow[1] * pixels)
  }
  return (
    <button
      type="button"
      className="underlay-point"
      aria-label={`${props.label}: ${Math.round(point.across)} across, ${Math.round(point.down)} down`}
      onKeyDown={key}
      style={{
        left: `${(100 * point.across) / underlay.width}%`,
        top: `${(100 * point.down) / underlay.height}%`,
      }}
    />
  )
}

function within({ width, height }: Underlay, { across, down }: PicturePoint): PicturePoint {
  return { across: Math.min(width, Math.max(0, across)), down: Math.min(height, Math.max(0, down)) }
}

function distance(one: PicturePoint, other: PicturePoint): number {
  return Math.hypot(one.across - other.across, one.down - other.down)
}
