import { records } from '../../../../core/project/job.ts'
import { sheens } from '../../../../core/project/vocabulary.ts'
import type { Picked, PickedScope } from '../../../../core/sketch/many/picked.ts'
import { finishAt, finishOnMany, type SaidFinish } from '../../../../core/sketch/many/set-records.ts'
import { productClassWords, sheenWords } from '../../../../core/specification/trade-words.ts'
import { useJob } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { together } from '../../parts/edits.ts'
import { sheenNotes } from '../../parts/glossary-words.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { depthWords, finishClasses } from '../../parts/words.ts'
import { ClassOfMany } from './ClassOfMany.tsx'
import { common, differs } from './common.ts'

/** What one class of surfaces of all that is picked becomes. */
export function ManyFinishes({ picked }: { readonly picked: Picked }) {
  return (
    <div className="tab-pad">
      <ClassOfMany picked={picked} page={(places) => <FinishFields places={places} />} />
    </div>
  )
}

function FinishFields({ places }: { readonly places: readonly PickedScope[] }) {
  const job = useJob()
  const now = places.map((place) => finishAt(job, place))
  const say = (said: SaidFinish) =>
    together(
      `choose a finish in ${places.length} places`,
      finishOnMany(job, places, said, () => newId('finish')),
    )
  const colours = records(job.colours).map(({ id, name, depth }) => ({
    id,
    label: name,
    note: depthWords[depth],
  }))
  return (
    <>
      <OneOf
        label="Painted"
        options={[
          { id: 'yes', label: 'yes' },
          { id: 'no', label: 'left as it is' },
        ]}
        chosen={common(now, ({ paint }) => (paint ? 'yes' : 'no')) ?? ''}
        onChoose={(id) => say({ paint: id === 'yes' })}
      />
      <div className="field-grid block">
        <Choice
          label="Color"
          options={colours}
          chosen={common(now, ({ colourId }) => colourId)}
          unchosen={now.every(({ colourId }) => colourId === null) ? 'No color yet' : differs}
          onChoose={(colourId) => say({ colourId })}
        />
        <Choice
          label="Sheen"
          options={optionsOf(sheens, sheenWords, sheenNotes)}
          chosen={common(now, ({ sheen }) => sheen)}
          unchosen={differs}
          onChoose={(sheen) => say({ sheen })}
        />
        <Choice
          label="Product"
          options={optionsOf(finishClasses, productClassWords)}
          chosen={common(now, ({ productClass }) => productClass)}
          unchosen={differs}
          onChoose={(productClass) => say({ productClass })}
        />
      </div>
    </>
  )
}
