import { Button } from 'react-aria-components'
import type { LinePoint, Room } from '../../../../core/project/sketch-records.ts'
import { type SlopeAxis, turnedLine } from '../../../../core/sketch/room-slopes.ts'
import { feet, lengthFromUnits } from '../../../../core/units/length.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { LengthField } from '../LengthField.tsx'

const alongWords = { x: 'across the sheet', y: 'down the sheet' } as const

function Along(props: { readonly along: SlopeAxis; readonly onChoose: (along: SlopeAxis) => void }) {
  return (
    <Choice
      label="Runs"
      options={optionsOf(['x', 'y'] as const, alongWords)}
      chosen={props.along}
      onChoose={props.onChoose}
    />
  )
}

/** A broken line by its points: how far along, how high. */
export function LineFields(props: {
  readonly room: Room
  readonly along: SlopeAxis
  readonly line: readonly LinePoint[]
  readonly onSet: (along: SlopeAxis, line: readonly LinePoint[]) => void
}) {
  const { room, along, line, onSet } = props
  const change = (index: number, point: LinePoint) =>
    onSet(
      along,
      line.map((one, place) => (place === index ? point : one)),
    )
  const last = line.at(-1)
  return (
    <>
      <Along along={along} onChoose={(next) => onSet(next, turnedLine(room, line, along, next))} />
      {line.map((point, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: points have no names but their order
        <div key={index} className="line-point">
          <LengthField label="At" length={point.at} onCommit={(at) => change(index, { ...point, at })} />
          <LengthField
            label="Height"
            length={point.height}
            onCommit={(height) => change(index, { ...point, height })}
          />
          <Button
            className="plain-button small"
            isDisabled={line.length <= 2}
            onPress={() =>
              onSet(
                along,
                line.filter((_, place) => place !== index),
              )
            }
          >
            Remove
          </Button>
        </div>
      ))}
      <Button
        className="plain-button"
        isDisabled={line.length >= 20 || last === undefined}
        onPress={() =>
          last !== undefined &&
          onSet(along, [...line, { at: lengthFromUnits(last.at + feet(1)), height: last.height }])
        }
      >
        Add a point
      </Button>
    </>
  )
}
