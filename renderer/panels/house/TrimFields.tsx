import { records } from '../../../core/project/job.ts'
import type { Room, TrimRun } from '../../../core/project/sketch-records.ts'
import { trimNouns } from '../../../core/project/sketch-words.ts'
import { type TrimKind, trimKinds } from '../../../core/project/vocabulary.ts'
import { roomWalls, wallLetter } from '../../../core/project/walls.ts'
import { feet, inches, type Length, zeroLength } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { Tick } from '../parts/Tick.tsx'
import { LengthField } from './LengthField.tsx'

/** Sizes a new run starts with; shop assumption, change them to what is there. */
const firstSizes: Readonly<
  Record<TrimKind, { readonly height: Length; readonly girth: Length; readonly level: Length }>
> = {
  baseboard: { height: inches(5.5), girth: inches(7), level: zeroLength },
  crown: { height: inches(3.5), girth: inches(5), level: zeroLength },
  pictureRail: { height: inches(1.75), girth: inches(3), level: feet(7) },
  chairRail: { height: inches(2.5), girth: inches(4), level: inches(32) },
  wainscotCap: { height: inches(1.5), girth: inches(4), level: inches(36) },
}

export function TrimFields(props: { readonly room: Room }) {
  const { room } = props
  const runs = records(useJob().trimRuns).filter((run) => run.roomId === room.id)
  const missing = trimKinds.filter((kind) => !runs.some((run) => run.kind === kind))
  return (
    <div className="leaf-pad">
      {runs.length === 0 ? (
        <p className="quiet">No trim yet. Runs stop by themselves at the openings they meet.</p>
      ) : null}
      {runs.map((run) => (
        <RunFields key={run.id} run={run} room={room} />
      ))}
      <h3>Add a run</h3>
      <span className="button-row">
        {missing.map((kind) => (
          <button key={kind} type="button" className="plain-button" onClick={() => add(kind, room)}>
            {capital(trimNouns[kind])}
          </button>
        ))}
      </span>
    </div>
  )
}

function add(kind: TrimKind, room: Room): void {
  const run: TrimRun = {
    id: newId('trim'),
    roomId: room.id,
    kind,
    walls: null,
    profiled: true,
    ...firstSizes[kind],
  }
  putRecord(`add a ${trimNouns[kind]}`, 'trimRuns', run)
}

function RunFields(props: { readonly run: TrimRun; readonly room: Room }) {
  const { run, room } = props
  const put = (change: Partial<TrimRun>) =>
    putRecord(`change the ${trimNouns[run.kind]}`, 'trimRuns', { ...run, ...change })
  const walls = roomWalls(room)
  const on = run.walls ?? walls.map((wall) => wall.id)
  const hasLevel = run.kind !== 'baseboard' && run.kind !== 'crown'
  return (
    <section className="block">
      <div className="run-head">
        <h3>{capital(trimNouns[run.kind])}</h3>
        <button
          type="button"
          className="plain-button small"
          onClick={() => removeRecord(`remove the ${trimNouns[run.kind]}`, 'trimRuns', run.id)}
        >
          Remove
        </button>
      </div>
      <div className="field-grid">
        <Choice
          label="Kind"
          options={optionsOf(trimKinds, trimNouns)}
          chosen={run.kind}
          onChoose={(kind) => put({ kind })}
        />
        <LengthField label="Face height" length={run.height} onCommit={(height) => put({ height })} isSmall />
        <LengthField label="Girth to paint" length={run.girth} onCommit={(girth) => put({ girth })} isSmall />
        {hasLevel ? (
          <LengthField
            label="Above the floor"
            length={run.level}
            onCommit={(level) => put({ level })}
            isSmall
          />
        ) : null}
        <Tick isOn={run.profiled} onChange={(profiled) => put({ profiled })}>
          Profiled
        </Tick>
      </div>
      <fieldset className="wall-ticks">
        <legend className="label">Runs along walls</legend>
        {walls.map((wall) => (
          <Tick
            key={wall.id}
            isOn={on.includes(wall.id)}
            onChange={(isOn) => {
              const next = walls
                .map((one) => one.id)
                .filter((id) => (id === wall.id ? isOn : on.includes(id)))
              if (next.length > 0) put({ walls: next.length === walls.length ? null : next })
            }}
          >
            {wallLetter(wall.index)}
          </Tick>
        ))}
      </fieldset>
    </section>
  )
}
