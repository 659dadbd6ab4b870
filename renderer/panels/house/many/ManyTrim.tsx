import { Button } from 'react-aria-components'
import { trimNouns } from '../../../../core/project/sketch-words.ts'
import { type TrimKind, trimKinds } from '../../../../core/project/vocabulary.ts'
import type { Picked } from '../../../../core/sketch/many/picked.ts'
import { noTrimOnMany, runsOfPicked, trimOnMany } from '../../../../core/sketch/many/set-sketch.ts'
import { capital } from '../../../../core/words/text.ts'
import { useJob } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { together } from '../../parts/edits.ts'
import { common } from './common.ts'
import { ManyLength } from './ManyLength.tsx'

/** Trim by kind: on all that is picked, on some of it or on none, with its sizes. */
export function ManyTrim({ picked }: { readonly picked: Picked }) {
  return (
    <div className="tab-pad">
      {trimKinds.map((kind) => (
        <TrimOfKind key={kind} picked={picked} kind={kind} />
      ))}
    </div>
  )
}

function TrimOfKind({ picked, kind }: { readonly picked: Picked; readonly kind: TrimKind }) {
  const job = useJob()
  const runs = runsOfPicked(job, picked, kind)
  const noun = trimNouns[kind]
  const rooms = new Set([...picked.rooms.map(({ id }) => id), ...picked.walls.map(({ roomId }) => roomId)])
  const having = new Set(runs.map(({ roomId }) => roomId)).size
  const put = (change: Partial<(typeof runs)[number]>) =>
    together(
      `change the ${noun} of ${having} rooms`,
      runs.map((run) => ({ kind: 'putRecord', collection: 'trimRuns', record: { ...run, ...change } })),
    )
  return (
    <section className="block" aria-label={capital(noun)}>
      <div className="run-head">
        <h3>
          {capital(noun)}{' '}
          <span className="quiet">in {having === 0 ? 'none' : `${having} of ${rooms.size}`}</span>
        </h3>
        <span className="button-row">
          <Button
            className="plain-button small"
            aria-label={`Set in all: ${noun}`}
            onPress={() =>
              together(
                `set ${noun} in ${rooms.size} rooms`,
                trimOnMany(job, picked, kind, () => newId('trim')),
              )
            }
          >
            Set in all
          </Button>
          {having === 0 ? null : (
            <Button
              className="plain-button small"
              aria-label={`Remove ${noun} from all`}
              onPress={() => together(`remove ${noun} from ${having} rooms`, noTrimOnMany(job, picked, kind))}
            >
              Remove
            </Button>
          )}
        </span>
      </div>
      {having === 0 ? null : (
        <div className="field-grid">
          <ManyLength
            label="Face height"
            length={common(runs, ({ height }) => height)}
            onCommit={(height) => put({ height })}
            isSmall
          />
          <ManyLength
            label="Girth to paint"
            length={common(runs, ({ girth }) => girth)}
            onCommit={(girth) => put({ girth })}
            isSmall
          />
        </div>
      )}
    </section>
  )
}
