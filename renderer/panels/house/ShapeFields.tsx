import { polygonBounds } from '../../../core/geometry/polygon.ts'
import { roomSpan } from '../../../core/project/heights.ts'
import { records } from '../../../core/project/job.ts'
import type {
  CeilingOpening,
  CeilingShape,
  FloorShape,
  LinePoint,
  Room,
} from '../../../core/project/sketch-records.ts'
import { ceilingOpeningKinds } from '../../../core/project/vocabulary.ts'
import { feet, inches, type Length, lengthFromUnits, zeroLength } from '../../../core/units/length.ts'
import { useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { command, putRecord, removeRecord } from '../parts/edits.ts'
import { LengthField } from './LengthField.tsx'

const shapeWords: Readonly<Record<CeilingShape['kind'], string>> = {
  flat: 'Flat',
  shed: 'Sloping one way (shed)',
  gable: 'Two slopes (gable)',
  vault: 'Two slopes with a flat (vault)',
  stair: 'Raked line (stair)',
}

const alongWords = { x: 'across the sheet', y: 'down the sheet' } as const

export function ShapeFields(props: { readonly room: Room }) {
  const { room } = props
  const set = (ceiling: CeilingShape) =>
    command(`shape the ceiling of ${room.name}`, { kind: 'setCeiling', roomId: room.id, ceiling })
  const setFloor = (floor: FloorShape) =>
    command(`shape the floor of ${room.name}`, { kind: 'setFloor', roomId: room.id, floor })
  return (
    <div className="tab-pad">
      <section className="block">
        <h3>Ceiling</h3>
        <Choice
          label="Shape"
          options={optionsOf(['flat', 'shed', 'gable', 'vault', 'stair'] as const, shapeWords)}
          chosen={room.ceiling.kind}
          onChoose={(kind) => set(shapeOf(kind, room))}
        />
        <CeilingHeights room={room} onSet={set} />
      </section>
      <section className="block">
        <h3>Floor</h3>
        <Choice
          label="Shape"
          options={[
            { id: 'level', label: 'Level' },
            { id: 'stair', label: 'Raked line (stair)' },
          ]}
          chosen={room.floor.kind}
          onChoose={(kind) =>
            setFloor(
              kind === 'level'
                ? { kind }
                : {
                    kind,
                    along: 'y',
                    line: [
                      { at: zeroLength, height: zeroLength },
                      { at: spanOf(room, 'y'), height: feet(4) },
                    ],
                  },
            )
          }
        />
        {room.floor.kind === 'stair' ? (
          <LineFields
            along={room.floor.along}
            line={room.floor.line}
            onSet={(along, line) => setFloor({ kind: 'stair', along, line })}
          />
        ) : null}
      </section>
      <CeilingOpenings room={room} />
    </div>
  )
}

function spanOf(room: Room, axis: 'x' | 'y'): Length {
  return lengthFromUnits(roomSpan(room, axis))
}

/** A shape to begin with, as high as the ceiling was. */
function shapeOf(kind: CeilingShape['kind'], room: Room): CeilingShape {
  const height = heightOf(room.ceiling)
  const span = spanOf(room, 'x')
  const low = lengthFromUnits(height / 2)
  switch (kind) {
    case 'flat':
      return { kind, height }
    case 'shed':
      return { kind, along: 'x', startHeight: low, endHeight: height }
    case 'gable':
      return {
        kind,
        along: 'x',
        startHeight: low,
        endHeight: low,
        ridgeAt: lengthFromUnits(span / 2),
        ridgeHeight: height,
      }
    case 'vault':
      return {
        kind,
        along: 'x',
        startHeight: low,
        endHeight: low,
        flatFrom: lengthFromUnits(span / 3),
        flatTo: lengthFromUnits((span * 2) / 3),
        flatHeight: height,
      }
    case 'stair':
      return {
        kind,
        along: 'x',
        line: [
          { at: zeroLength, height },
          { at: span, height: lengthFromUnits(height + feet(4)) },
        ],
      }
  }
}

function heightOf(ceiling: CeilingShape): Length {
  switch (ceiling.kind) {
    case 'flat':
      return ceiling.height
    case 'shed':
      return lengthFromUnits(Math.max(ceiling.startHeight, ceiling.endHeight))
    case 'gable':
      return ceiling.ridgeHeight
    case 'vault':
      return ceiling.flatHeight
    case 'stair':
      return ceiling.line[0]?.height ?? feet(8)
  }
}

/** What is asked of each shape that rises along one direction, in the order it is asked. */
const heightWords = {
  shed: { startHeight: 'Height at the start', endHeight: 'Height at the end' },
  gable: {
    startHeight: 'Height at the start',
    endHeight: 'Height at the end',
    ridgeAt: 'Ridge from the start',
    ridgeHeight: 'Height of the ridge',
  },
  vault: {
    startHeight: 'Height at the start',
    endHeight: 'Height at the end',
    flatFrom: 'Flat begins at',
    flatTo: 'Flat ends at',
    flatHeight: 'Height of the flat',
  },
} as const

function CeilingHeights(props: { readonly room: Room; readonly onSet: (ceiling: CeilingShape) => void }) {
  const { onSet } = props
  const { ceiling } = props.room
  switch (ceiling.kind) {
    case 'flat':
      return (
        <LengthField
          label="Height"
          length={ceiling.height}
          onCommit={(height) => onSet({ ...ceiling, height })}
        />
      )
    case 'shed':
    case 'gable':
    case 'vault': {
      // The fields named in the words are lengths of the record.
      const lengths: Readonly<Record<string, unknown>> = { ...ceiling }
      return (
        <div className="field-grid">
          <Along along={ceiling.along} onChoose={(along) => onSet({ ...ceiling, along })} />
          {Object.entries(heightWords[ceiling.kind]).map(([field, label]) => (
            <LengthField
              key={field}
              label={label}
              length={lengths[field] as Length}
              onCommit={(length) => onSet({ ...ceiling, [field]: length })}
            />
          ))}
        </div>
      )
    }
    case 'stair':
      return (
        <LineFields
          along={ceiling.along}
          line={ceiling.line}
          onSet={(along, line) => onSet({ kind: 'stair', along, line })}
        />
      )
  }
}

function Along(props: { readonly along: 'x' | 'y'; readonly onChoose: (along: 'x' | 'y') => void }) {
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
function LineFields(props: {
  readonly along: 'x' | 'y'
  readonly line: readonly LinePoint[]
  readonly onSet: (along: 'x' | 'y', line: readonly LinePoint[]) => void
}) {
  const { along, line, onSet } = props
  const change = (index: number, point: LinePoint) =>
    onSet(
      along,
      line.map((one, place) => (place === index ? point : one)),
    )
  const last = line.at(-1)
  return (
    <>
      <Along along={along} onChoose={(next) => onSet(next, line)} />
      {line.map((point, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: points have no names but their order
        <div key={index} className="line-point">
          <LengthField label="At" length={point.at} onCommit={(at) => change(index, { ...point, at })} />
          <LengthField
            label="Height"
            length={point.height}
            onCommit={(height) => change(index, { ...point, height })}
          />
          <button
            type="button"
            className="plain-button small"
            disabled={line.length <= 2}
            onClick={() =>
              onSet(
                along,
                line.filter((_, place) => place !== index),
              )
            }
          >
            Remove
          </button>
        </div>
      ))}
      <button
        type="button"
        className="plain-button"
        disabled={line.length >= 20 || last === undefined}
        onClick={() =>
          last !== undefined &&
          onSet(along, [...line, { at: lengthFromUnits(last.at + feet(1)), height: last.height }])
        }
      >
        Add a point
      </button>
    </>
  )
}

const ceilingOpeningWords = { stairwell: 'Stairwell', skylight: 'Skylight', hatch: 'Hatch' } as const

function CeilingOpenings(props: { readonly room: Room }) {
  const { room } = props
  const holes = records(useJob().ceilingOpenings).filter((hole) => hole.roomId === room.id)
  const { min } = polygonBounds(room.corners)
  const put = (hole: CeilingOpening) => putRecord('change a ceiling opening', 'ceilingOpenings', hole)
  return (
    <section className="block">
      <h3>Openings in the ceiling</h3>
      {holes.map((hole) => (
        <div key={hole.id} className="field-grid boxed">
          <Choice
            label="Kind"
            options={optionsOf(ceilingOpeningKinds, ceilingOpeningWords)}
            chosen={hole.kind}
            onChoose={(kind) => put({ ...hole, kind })}
          />
          <LengthField
            label="From the left"
            length={lengthFromUnits(hole.x - min.x)}
            onCommit={(x) => put({ ...hole, x: lengthFromUnits(min.x + x) })}
          />
          <LengthField
            label="From the top"
            length={lengthFromUnits(hole.y - min.y)}
            onCommit={(y) => put({ ...hole, y: lengthFromUnits(min.y + y) })}
          />
          <LengthField label="Width" length={hole.width} onCommit={(width) => put({ ...hole, width })} />
          <LengthField label="Depth" length={hole.depth} onCommit={(depth) => put({ ...hole, depth })} />
          <LengthField
            label="Painted shaft"
            length={hole.revealDepth}
            onCommit={(revealDepth) => put({ ...hole, revealDepth })}
            isSmall
          />
          <button
            type="button"
            className="stop-button"
            onClick={() => removeRecord('remove a ceiling opening', 'ceilingOpenings', hole.id)}
          >
            Remove
          </button>
        </div>
      ))}
      <button
        type="button"
        className="plain-button"
        onClick={() =>
          put({
            id: newId('hatch'),
            roomId: room.id,
            kind: 'hatch',
            x: lengthFromUnits(min.x + inches(6)),
            y: lengthFromUnits(min.y + inches(6)),
            width: inches(24),
            depth: inches(24),
            revealDepth: zeroLength,
          })
        }
      >
        Add a hatch
      </button>
    </section>
  )
}
