import { Button } from 'react-aria-components'
import { colourDepths, existingCoats, sheens, substrates } from '../../../../core/project/vocabulary.ts'
import type { Picked, PickedScope } from '../../../../core/sketch/many/picked.ts'
import { existingAt, existingOnMany, type SaidFacts } from '../../../../core/sketch/many/set-records.ts'
import { existingCoatWords, sheenWords } from '../../../../core/specification/trade-words.ts'
import { useJob } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { together } from '../../parts/edits.ts'
import { coatNotes, sheenNotes, substrateNotes } from '../../parts/glossary-words.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { depthWords, substrateWords } from '../../parts/words.ts'
import { ClassOfMany } from './ClassOfMany.tsx'
import { common } from './common.ts'

/** What is there now on one class of surfaces of all that is picked. */
export function ManyExisting({ picked }: { readonly picked: Picked }) {
  return (
    <div className="tab-pad">
      <ClassOfMany picked={picked} page={(places) => <ExistingFields places={places} />} />
    </div>
  )
}

function ExistingFields({ places }: { readonly places: readonly PickedScope[] }) {
  const job = useJob()
  const said = places.map((place) => existingAt(job, place))
  const say = (facts: SaidFacts) =>
    together(
      `say what is there now in ${places.length} places`,
      existingOnMany(job, places, facts, () => newId('existing')),
    )
  const unchosen = said.every((each) => each === null) ? 'Not said here' : 'Not said of all'
  const texture = common(said, (each) => each?.textured ?? null)
  return (
    <>
      <div className="field-grid block">
        <Choice
          label="Made of"
          options={optionsOf(substrates, substrateWords, substrateNotes)}
          chosen={common(said, (each) => each?.substrate ?? null)}
          unchosen={unchosen}
          onChoose={(substrate) => say({ substrate })}
        />
        <Choice
          label="Coat on it"
          options={optionsOf(existingCoats, existingCoatWords, coatNotes)}
          chosen={common(said, (each) => each?.coat ?? null)}
          unchosen={unchosen}
          onChoose={(coat) => say({ coat })}
        />
        <Choice
          label="Its sheen"
          options={optionsOf(sheens, sheenWords, sheenNotes)}
          chosen={common(said, (each) => each?.sheen ?? null)}
          unchosen={unchosen}
          onChoose={(sheen) => say({ sheen })}
        />
        <Choice
          label="Its color"
          options={optionsOf(colourDepths, depthWords)}
          chosen={common(said, (each) => each?.depth ?? null)}
          unchosen={unchosen}
          onChoose={(depth) => say({ depth })}
        />
      </div>
      <OneOf
        label="Sand, stipple or popcorn texture"
        options={[
          { id: 'yes', label: 'yes' },
          { id: 'no', label: 'no' },
        ]}
        chosen={texture === null ? '' : texture ? 'yes' : 'no'}
        onChoose={(id) => say({ textured: id === 'yes' })}
      />
      {said.some((each) => each !== null) ? (
        <Button
          className="plain-button"
          onPress={() => say({ substrate: null, coat: null, sheen: null, depth: null, textured: null })}
        >
          Take back what is said of these
        </Button>
      ) : null}
    </>
  )
}
