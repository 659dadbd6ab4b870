import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { Existing, ExistingId, Scope } from '../../../core/project/survey-records.ts'
import { colourDepths, existingCoats, sheens, substrates } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { sheenWords, surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { newId } from '../../state/app.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { coatNotes, coatSigns, sheenNotes, substrateNotes } from '../parts/glossary-words.ts'
import { ScopeBar } from '../parts/ScopeBar.tsx'
import { recordAt, recordFor, type ScopeLevel, scopesOf } from '../parts/scopes.ts'
import { Tick } from '../parts/Tick.tsx'
import { depthWords, existingCoatWords, substrateWords } from '../parts/words.ts'

type Said = Omit<Existing, 'id' | 'scope'>

/** What is on the surface now: said for itself, for its kind in the room, or for the house; the narrowest holds. */
export function ExistingPaper({ job, surface }: { readonly job: Job; readonly surface: SurfaceQuantity }) {
  const place = { surfaceClass: surface.surfaceClass, roomId: surface.roomId, surface: surface.surface }
  const scopes = scopesOf(place)
  const holding = recordFor(job.existing, place)
  const [chosen, setChosen] = useState<ScopeLevel>('room')
  const scope = scopes.find((each) => each.level === chosen) ?? scopes[0]
  if (scope === undefined) return null
  const shown = shownAt(job, surface, scope)
  const own = recordAt(job.existing, scope)
  const ownLevels = new Set(
    scopes.filter((each) => recordAt(job.existing, each) !== null).map((each) => each.level),
  )
  const say = (changes: Partial<Said>) =>
    putRecord('Say what is there now', 'existing', {
      id: own?.id ?? (newId('existing') as ExistingId),
      scope,
      ...(shown ?? unsaid),
      ...changes,
    })
  return (
    <section className="block" aria-label="What is there now">
      <h3>What is there now</h3>
      <ScopeBar
        label="Say it for"
        scopes={scopes}
        wordsOf={(each) => scopeWords(job, surface, each)}
        ownLevels={ownLevels}
        level={scope.level}
        onLevel={setChosen}
      />
      {holding === null ? (
        <p className="quiet">
          Nobody has said yet what is on this surface. Until then the rules take the usual for a house of this
          age, and treat the coat as not known.
        </p>
      ) : holding.scope.level === scope.level ? null : (
        <p className="quiet">
          On this surface the {levelNoun[holding.scope.level]} holds: {existingCoatWords[holding.coat]} on{' '}
          {substrateWords[holding.substrate]}, {sheenWords[holding.sheen]}, {depthWords[holding.depth]}.
        </p>
      )}
      <div className="field-grid">
        <Choice
          label="Made of"
          options={optionsOf(substrates, substrateWords, substrateNotes)}
          chosen={shown?.substrate ?? null}
          unchosen="Not said"
          onChoose={(substrate) => say({ substrate })}
        />
        <Choice
          label="Coat on it"
          options={optionsOf(existingCoats, existingCoatWords, coatNotes)}
          chosen={shown?.coat ?? null}
          unchosen="Not said"
          onChoose={(coat) => say({ coat })}
        />
        <Choice
          label="Its sheen"
          options={optionsOf(sheens, sheenWords, sheenNotes)}
          chosen={shown?.sheen ?? null}
          unchosen="Not said"
          onChoose={(sheen) => say({ sheen })}
        />
        <Choice
          label="Its colour"
          options={optionsOf(colourDepths, depthWords)}
          chosen={shown?.depth ?? null}
          unchosen="Not said"
          onChoose={(depth) => say({ depth })}
        />
      </div>
      <div className="button-row">
        <Tick isOn={shown?.textured ?? false} onChange={(textured) => say({ textured })}>
          Sand, stipple or popcorn texture on it
        </Tick>
        {own === null || scope.level === 'house' ? null : (
          <Button
            className="plain-button"
            onPress={() => removeRecord('Put back what was inherited', 'existing', own.id)}
          >
            Put back to what is inherited
          </Button>
        )}
      </div>
      {shown === null ? null : (
        <p className="recognise">
          <strong>How to tell: </strong>
          {coatSigns[shown.coat]}
        </p>
      )}
    </section>
  )
}

const levelNoun = {
  surface: 'entry for itself',
  room: 'entry for the room',
  house: 'entry for the house',
} as const

const unsaid: Said = {
  substrate: 'plaster',
  coat: 'unknown',
  sheen: 'eggshell',
  depth: 'white',
  textured: false,
}

/** What stands at a scope: its own record, else what a wider scope says. */
function shownAt(job: Job, surface: SurfaceQuantity, scope: Scope): Said | null {
  const { surfaceClass, roomId } = surface
  const found = recordFor(job.existing, {
    surfaceClass,
    roomId: scope.level === 'house' ? null : roomId,
    surface: scope.level === 'surface' ? surface.surface : null,
  })
  if (found === null) return null
  const { id: _id, scope: _scope, ...said } = found
  return said
}

function scopeWords(job: Job, surface: SurfaceQuantity, scope: Scope): string {
  const kind = surfaceClassWords[surface.surfaceClass].toLowerCase()
  switch (scope.level) {
    case 'surface':
      return surfaceWords(job, surface.surface)
    case 'room':
      return `${kind} in ${job.rooms[surface.roomId]?.name ?? 'the room'}`
    case 'house':
      return `${kind} in the house`
  }
}
