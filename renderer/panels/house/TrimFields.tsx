import { Button } from 'react-aria-components'
import { records } from '../../../core/project/job.ts'
import type { Room, TrimRun } from '../../../core/project/sketch-records.ts'
import { trimNouns } from '../../../core/project/sketch-words.ts'
import { type TrimKind, trimKinds } from '../../../core/project/vocabulary.ts'
import { roomWalls, wallLetter } from '../../../core/project/walls.ts'
import { runsOfLastRoom } from '../../../core/sketch/room-defaults.ts'
import { firstTrimSizes } from '../../../core/sketch/trim-sizes.ts'
import { capital } from '../../../core/words/text.ts'
import { useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { command, putRecord, removeRecord } from '../parts/edits.ts'
import { HintButton } from '../parts/HintButton.tsx'
import { Tick } from '../parts/Tick.tsx'
import { LengthField } from './LengthField.tsx'

export function TrimFields(props: { readonly room: Room }) {
  const { room } = props
  const runs = records(useJob().trimRuns).filter((run) => run.roomId === room.id)
  const missing = trimKinds.filter((kind) => !runs.some((run) => run.kind === kind))
  return (
    <div className="tab-pad">
      {runs.length === 0 ? (
        <p className="quiet">No trim yet. Runs stop by themselves at the openings they meet.</p>
      ) : null}
      {runs.map((run) => (
        <RunFields key={run.id} run={run} room={room} />
      ))}
      <h3>Add a run</h3>
      <span className="button-row">
        {missing.map((kind) => (
          <Button key={kind} className="plain-button" onPress={() => add(kind, room)}>
            {capital(trimNouns[kind])}
          </Button>
        ))}
        <AsLastRoom room={room} />
      </span>
    </div>
  )
}

/** Crown and rails go on to the next room only when this is chosen. */
function AsLastRoom({ room }: { readonly room: Room }) {
  const last = runsOfLastRoom(useJob(), room.id)
  if (last === null || last.runs.length === 0) return null
  const { lastRoom, runs } = last
  return (
    <HintButton
      className="plain-button"
      hint={runs.map(({ kind }) => trimNouns[kind]).join(', ')}
      onPress={() =>
        command(
          `give ${room.name} the trim of ${lastRoom.name}`,
          ...runs.map((run) => ({ kind: 'addTrimRun' as const, trimRun: { ...run, id: newId('trim') } })),
        )
      }
    >
      As in {lastRoom.name}
    </HintButton>
  )
}

function add(kind: TrimKind, room: Room): void {
  const run: TrimRun = {
    id: newId('trim'),
    roomId: room.id,
    kind,
    walls: null,
    profiled: true,
    ...firstTrimSizes[kind],
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
        <Button
          className="plain-button small"
          onPress={() => removeRecord(`remove the ${trimNouns[run.kind]}`, 'trimRuns', run.id)}
        >
          Remove
        </Button>
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
