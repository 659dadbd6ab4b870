import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Room } from '../../../../core/project/sketch-records.ts'
import type { SketchCommand } from '../../../../core/sketch/commands.ts'
import { type PlanSide, type StairMeasure, stairShape } from '../../../../core/sketch/room-slopes.ts'
import { feet, formatLength, lengthFromUnits } from '../../../../core/units/length.ts'
import { useJob } from '../../../state/app.ts'
import { optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { together } from '../../parts/edits.ts'
import { wholeNumber } from '../../parts/entries.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { Tick } from '../../parts/Tick.tsx'
import { LengthField } from '../LengthField.tsx'
import { SectionDrawing } from './SectionDrawing.tsx'
import { firstMeasure, putStair } from './stair-measures.ts'

const footWords: Readonly<Record<PlanSide, string>> = {
  left: 'left',
  right: 'right',
  top: 'top',
  bottom: 'bottom',
}

/** A stair by what is measured on it: rise, run, treads; the floor and the ceiling over it follow. */
export function StairForm({ room }: { readonly room: Room }) {
  const [isOpen, setOpen] = useState(false)
  if (!isOpen)
    return (
      <Button className="plain-button" onPress={() => setOpen(true)}>
        A stair runs through this room
      </Button>
    )
  return <StairFields room={room} onDone={() => setOpen(false)} />
}

function StairFields({ room, onDone }: { readonly room: Room; readonly onDone: () => void }) {
  const system = useJob().header.unitSystem
  const [measure, setMeasure] = useState(() => firstMeasure(room))
  const [counts, setCounts] = useState(true)
  const change = (part: Partial<StairMeasure>) => setMeasure({ ...measure, ...part })
  const shaped = stairShape(room, measure, system)
  const top = lengthFromUnits(measure.rise * (measure.treads + 1))
  const set = () => {
    if (!shaped.ok) return
    const commands: readonly SketchCommand[] = [
      { kind: 'setRoom', roomId: room.id, change: shaped.value },
      ...(counts ? [putStair(room, measure)] : []),
    ]
    if (together(`set a stair in ${room.name}`, commands)) onDone()
  }
  return (
    <section aria-label="Stair">
      <div className="field-grid">
        <LengthField
          label="Rise of a step"
          length={measure.rise}
          onCommit={(rise) => change({ rise })}
          isSmall
        />
        <LengthField
          label="Run of a tread"
          length={measure.run}
          onCommit={(run) => change({ run })}
          isSmall
        />
        <EntryField
          label="Treads"
          shown={String(measure.treads)}
          read={wholeNumber(1, 40)}
          onCommit={(treads) => change({ treads })}
          width="short"
        />
        {measure.headroom === null ? null : (
          <LengthField
            label="Ceiling over the slope"
            length={measure.headroom}
            onCommit={(headroom) => change({ headroom })}
          />
        )}
      </div>
      <OneOf
        label="Foot of the stair on the plan"
        options={optionsOf(['left', 'right', 'top', 'bottom'] as const, footWords)}
        chosen={measure.foot}
        onChoose={(foot) => change({ foot })}
      />
      <Tick isOn={measure.headroom !== null} onChange={(isOn) => change({ headroom: isOn ? feet(8) : null })}>
        The ceiling rises with the stair
      </Tick>
      <Tick isOn={counts} onChange={setCounts}>
        Count its treads and risers among built work
      </Tick>
      {shaped.ok ? (
        <>
          <SectionDrawing room={{ ...room, ...shaped.value }} />
          <p className="quiet">
            {measure.treads + 1} risers, {formatLength(top, system)} up in all.
          </p>
        </>
      ) : (
        <p className="field-error" role="alert">
          {shaped.problem.sentence}
        </p>
      )}
      <span className="button-row">
        <Button className="act-button" isDisabled={!shaped.ok} onPress={set}>
          Set this stair
        </Button>
        <Button className="plain-button" onPress={onDone}>
          Cancel
        </Button>
      </span>
    </section>
  )
}
