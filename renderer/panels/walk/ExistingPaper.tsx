import { useState } from 'react'
import { Button } from 'react-aria-components'
import { keysOf } from '../../../core/lists/lists.ts'
import type { Job } from '../../../core/project/job.ts'
import type { ExistingFacts } from '../../../core/project/scopes.ts'
import type { Scope } from '../../../core/project/survey-records.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { existingCoatWords, sheenWords, surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { coatNotes, coatSigns, sheenNotes, substrateNotes } from '../parts/glossary-words.ts'
import { ScopeBar } from '../parts/ScopeBar.tsx'
import { recordAt, type ScopeLevel, scopesOf } from '../parts/scope-choices.ts'
import { Tick } from '../parts/Tick.tsx'
import { depthWords, substrateWords } from '../parts/words.ts'
import { type HoldingFact, holdingFacts, withFacts } from './existing-facts.ts'

/** What is on the surface now: said for itself, for its kind in the room, or for the house; each fact by the narrowest that says it. */
export function ExistingPaper({ job, surface }: { readonly job: Job; readonly surface: SurfaceQuantity }) {
  const place = { surfaceClass: surface.surfaceClass, roomId: surface.roomId, surface: surface.surface }
  const scopes = scopesOf(place)
  const [chosen, setChosen] = useState<ScopeLevel>('room')
  const scope = scopes.find((each) => each.level === chosen) ?? scopes[0]
  if (scope === undefined) return null
  const facts = holdingFacts(job, place, scope)
  const own = recordAt(job.existing, scope)
  const ownLevels = new Set(
    scopes.filter((each) => recordAt(job.existing, each) !== null).map((each) => each.level),
  )
  const say = (changes: Partial<ExistingFacts>) => {
    const next = withFacts(own, scope, () => newId('existing'), changes)
    if (next !== null) putRecord('Say what is there now', 'existing', next)
    else if (own !== null) removeRecord('Say nothing of what is there', 'existing', own.id)
  }
  const coat = facts.coat.own ?? facts.coat.otherwise?.value ?? 'unknown'
  return (
    <section className="block" aria-label="What is there now">
      <h3>What is there now</h3>
      <ScopeBar
        label="Applies to"
        scopes={scopes}
        wordsOf={(each) => scopeWords(job, surface, each)}
        ownLevels={ownLevels}
        level={scope.level}
        onLevel={setChosen}
      />
      <div className="field-grid">
        <FactChoice
          label="Made of"
          words={substrateWords}
          notes={substrateNotes}
          fact={facts.substrate}
          onSay={(substrate) => say({ substrate })}
        />
        <FactChoice
          label="Coat on it"
          words={existingCoatWords}
          notes={coatNotes}
          fact={facts.coat}
          onSay={(said) => say({ coat: said })}
        />
        <FactChoice
          label="Its sheen"
          words={sheenWords}
          notes={sheenNotes}
          fact={facts.sheen}
          onSay={(sheen) => say({ sheen })}
        />
        <FactChoice
          label="Its color"
          words={depthWords}
          fact={facts.depth}
          onSay={(depth) => say({ depth })}
        />
      </div>
      <div className="button-row">
        <Tick
          isOn={facts.textured.own ?? facts.textured.otherwise?.value ?? false}
          onChange={(textured) => say({ textured })}
        >
          Sand, stipple or popcorn texture on it
        </Tick>
        {own === null ? null : (
          <Button
            className="plain-button"
            onPress={() => removeRecord('Say nothing of what is there', 'existing', own.id)}
          >
            Take back what is said here
          </Button>
        )}
      </div>
      <p className="recognise">
        <strong>How to tell: </strong>
        {coatSigns[coat]}
      </p>
    </section>
  )
}

const unsaid = 'unsaid'

/** One fact of a closed list. What nobody said here can be left so, and the field shows what holds instead. */
function FactChoice<Tag extends string>(props: {
  readonly label: string
  readonly words: Readonly<Record<Tag, string>>
  readonly notes?: Readonly<Record<Tag, string>>
  readonly fact: HoldingFact<Tag>
  readonly onSay: (said: Tag | null) => void
}) {
  const { fact, words, notes } = props
  // The words are a closed list; their keys are its tags.
  const tags = keysOf(words)
  return (
    <Choice<Tag | typeof unsaid>
      label={props.label}
      options={[{ id: unsaid, ...unsaidWords(fact, words) }, ...optionsOf(tags, words, notes)]}
      chosen={fact.own ?? unsaid}
      onChoose={(id) => props.onSay(id === unsaid ? null : id)}
    />
  )
}

function unsaidWords<Tag extends string>(
  { otherwise }: HoldingFact<Tag>,
  words: Readonly<Record<Tag, string>>,
): { readonly label: string; readonly note: string } {
  if (otherwise === null)
    return { label: 'Not said', note: 'Nobody has said; coats are counted as for a change of color.' }
  const word = words[otherwise.value]
  switch (otherwise.from) {
    case 'taken':
      return { label: `${word} (taken)`, note: 'Nobody has said; this is the usual for a house of this age.' }
    case 'room':
      return { label: `${word} (room)`, note: 'Set for this kind of surface in the room.' }
    case 'house':
      return { label: `${word} (house)`, note: 'Set for this kind of surface in the house.' }
  }
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
