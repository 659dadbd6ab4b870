import { useState } from 'react'
import { Button } from 'react-aria-components'
import { sameValue } from '../../../../core/project/same-value.ts'
import type { CeilingShape, Room } from '../../../../core/project/sketch-records.ts'
import {
  firstCeiling,
  lowSide,
  type PlanSide,
  type SlopeAxis,
  slopeFrom,
  turnedCeiling,
} from '../../../../core/sketch/room-slopes.ts'
import { type Length, lengthFromUnits } from '../../../../core/units/length.ts'
import { useJob } from '../../../state/app.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { command } from '../../parts/edits.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { LengthField } from '../LengthField.tsx'
import { LineFields } from './LineFields.tsx'
import { SectionDrawing } from './SectionDrawing.tsx'

const shapeWords: Readonly<Record<CeilingShape['kind'], string>> = {
  flat: 'Flat',
  shed: 'Sloping one way (shed)',
  gable: 'Two slopes (gable)',
  vault: 'Two slopes with a flat (vault)',
  stair: 'Stair slope',
}

const sideWords: Readonly<Record<PlanSide, string>> = {
  left: 'left',
  right: 'right',
  top: 'top',
  bottom: 'bottom',
}

/** All heights of a ceiling, drawn as they are typed and set in one go; a flat height is set at once. */
export function CeilingForm({ room }: { readonly room: Room }) {
  const job = useJob()
  const [typed, setTyped] = useState<CeilingShape | null>(null)
  const shape = typed ?? room.ceiling
  const set = (ceiling: CeilingShape) =>
    command(`shape the ceiling of ${room.name}`, { kind: 'setCeiling', roomId: room.id, ceiling })
  const isSet = typed === null || sameValue(typed, room.ceiling)
  return (
    <section className="block">
      <h3>Ceiling</h3>
      <Choice
        label="Shape"
        options={optionsOf(['flat', 'shed', 'gable', 'vault', 'stair'] as const, shapeWords)}
        chosen={shape.kind}
        onChoose={(kind) => setTyped(kind === room.ceiling.kind ? null : firstCeiling(job, room, kind))}
      />
      {shape.kind === 'flat' ? null : <SectionDrawing room={{ ...room, ceiling: shape }} />}
      <div className="field-grid">
        <CeilingFields
          room={room}
          shape={shape}
          onChange={(next) => {
            if (next.kind === 'flat') {
              if (set(next)) setTyped(null)
            } else setTyped(next)
          }}
        />
      </div>
      {isSet ? null : (
        <span className="button-row">
          <Button className="act-button" onPress={() => set(shape) && setTyped(null)}>
            Set this ceiling
          </Button>
          <Button className="plain-button" onPress={() => setTyped(null)}>
            As it was
          </Button>
        </span>
      )}
    </section>
  )
}

function CeilingFields(props: {
  readonly room: Room
  readonly shape: CeilingShape
  readonly onChange: (shape: CeilingShape) => void
}) {
  const { room, shape, onChange } = props
  if (shape.kind === 'flat')
    return (
      <LengthField
        label="Height"
        length={shape.height}
        onCommit={(height) => onChange({ ...shape, height })}
      />
    )
  if (shape.kind === 'shed') return <SlopeFields shape={shape} onChange={onChange} />
  if (shape.kind === 'stair')
    return (
      <LineFields
        room={room}
        along={shape.along}
        line={shape.line}
        onSet={(along, line) => onChange({ kind: 'stair', along, line })}
      />
    )
  return <PeakFields room={room} shape={shape} onChange={onChange} />
}

function SlopeFields(props: {
  readonly shape: Extract<CeilingShape, { kind: 'shed' }>
  readonly onChange: (shape: CeilingShape) => void
}) {
  const { startHeight, endHeight } = props.shape
  const side = lowSide(props.shape)
  const [low, high] = [Math.min(startHeight, endHeight), Math.max(startHeight, endHeight)].map(
    lengthFromUnits,
  )
  if (low === undefined || high === undefined) return null
  return (
    <>
      <OneOf
        label="Low side on the plan"
        options={optionsOf(['left', 'right', 'top', 'bottom'] as const, sideWords)}
        chosen={side}
        onChoose={(next) => props.onChange(slopeFrom(next, low, high))}
      />
      <LengthField
        label="Low side"
        length={low}
        onCommit={(next) => props.onChange(slopeFrom(side, next, high))}
      />
      <LengthField
        label="High side"
        length={high}
        onCommit={(next) => props.onChange(slopeFrom(side, low, next))}
      />
    </>
  )
}

const directionWords = { x: 'left and right', y: 'top and bottom' } as const
const endWords = { x: ['left', 'right'], y: ['top', 'bottom'] } as const

function PeakFields(props: {
  readonly room: Room
  readonly shape: Extract<CeilingShape, { kind: 'gable' | 'vault' }>
  readonly onChange: (shape: CeilingShape) => void
}) {
  const { room, shape, onChange } = props
  const [start, end] = endWords[shape.along]
  return (
    <>
      <OneOf<SlopeAxis>
        label="Low sides on the plan"
        options={optionsOf(['x', 'y'] as const, directionWords)}
        chosen={shape.along}
        onChoose={(along) => onChange(turnedCeiling(room, shape, along))}
      />
      <LengthField
        label={`Low side, ${start}`}
        length={shape.startHeight}
        onCommit={(startHeight) => onChange({ ...shape, startHeight })}
      />
      <LengthField
        label={`Low side, ${end}`}
        length={shape.endHeight}
        onCommit={(endHeight) => onChange({ ...shape, endHeight })}
      />
      <PeakPlace shape={shape} onChange={onChange} from={start} />
    </>
  )
}

function PeakPlace(props: {
  readonly shape: Extract<CeilingShape, { kind: 'gable' | 'vault' }>
  readonly onChange: (shape: CeilingShape) => void
  readonly from: string
}) {
  const { shape, onChange, from } = props
  const length = (label: string, value: Length, next: (length: Length) => CeilingShape) => (
    <LengthField label={label} length={value} onCommit={(typed) => onChange(next(typed))} />
  )
  if (shape.kind === 'gable')
    return (
      <>
        {length('Ridge', shape.ridgeHeight, (ridgeHeight) => ({ ...shape, ridgeHeight }))}
        {length(`Ridge from the ${from}`, shape.ridgeAt, (ridgeAt) => ({ ...shape, ridgeAt }))}
      </>
    )
  return (
    <>
      {length('Flat part', shape.flatHeight, (flatHeight) => ({ ...shape, flatHeight }))}
      {length(`Flat begins, from the ${from}`, shape.flatFrom, (flatFrom) => ({ ...shape, flatFrom }))}
      {length(`Flat ends, from the ${from}`, shape.flatTo, (flatTo) => ({ ...shape, flatTo }))}
    </>
  )
}
