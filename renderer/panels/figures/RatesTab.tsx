import { useState } from 'react'
import { Button } from 'react-aria-components'
import { defaultRate, defaultRates } from '../../../core/price/default-rates.ts'
import { type RateSuggestion, rateSuggestions } from '../../../core/progress/rate-suggestions.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Rate, RateBasis } from '../../../core/project/shop-records.ts'
import { surfaceClasses } from '../../../core/project/vocabulary.ts'
import { operationWords, surfaceNoun } from '../../../core/specification/trade-words.ts'
import type { Operation, Specification } from '../../../core/specification/types.ts'
import { woodworkWords } from '../../../core/specification/woodwork.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord } from '../parts/edits.ts'
import { decimalNumber } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { KindRates } from './KindRates.tsx'

const basisWords: Readonly<Record<RateBasis, string>> = {
  area: 'sq ft an hour',
  length: 'ft an hour',
  count: 'pieces an hour',
  each: 'rooms an hour',
}

/** Names of surface classes and kinds of woodwork as rates end in them; a class that is a kind too has one name. */
const placeNames: Readonly<Record<string, string>> = {
  ...woodworkWords,
  ...Object.fromEntries(surfaceClasses.map((each) => [each, surfaceNoun(each)])),
}

const addedWords: Readonly<Record<string, string>> = {
  cutIn: 'Cut in along an edge',
  glassEdge: 'Paint along glass',
  fillPatches: 'Fill patches',
  fillHoles: 'Fill holes',
  sandFillPatches: 'Sand filled patches',
  sandFillHoles: 'Sand filled holes',
  caulkSpots: 'Caulk spots',
  scrapeEdges: 'Feather scraped edges',
}

/** The shop's own pace, what it rests on, and what finished steps say about it. */
export function RatesTab({
  job,
  specification,
}: {
  readonly job: Job
  readonly specification: Specification
}) {
  const isOfJob = specification.steps.length > 0
  const [onlyUsed, setOnlyUsed] = useState(isOfJob)
  const used = new Set<string>(specification.steps.map((step) => step.operation))
  const suggestions = new Map<string, RateSuggestion>(
    rateSuggestions(job, specification).map((each) => [each.rate.id, each]),
  )
  const all = [
    ...new Map([...defaultRates, ...Object.values(job.rates)].map((rate) => [rate.id, rate])).values(),
  ]
  const shown = onlyUsed ? all.filter((rate) => isUsed(rate.id, used)) : all

  return (
    <div className="pane pane-wide">
      <div className="tab-intro">
        <p>
          How much one person does in an hour. All are starting points of the shop until its own hours replace
          them: steps marked done with their minutes on Site give a suggestion here.
        </p>
        {isOfJob ? (
          <Tick isOn={onlyUsed} onChange={setOnlyUsed}>
            Only rates this job uses
          </Tick>
        ) : null}
      </div>
      <div className="scroll">
        <table className="pick-table rates-table">
          <thead>
            <tr>
              <th scope="col">Work</th>
              <th scope="col">In an hour</th>
              <th scope="col">Rests on</th>
              <th scope="col">The shop’s own hours say</th>
              <th scope="col">
                <span className="unseen">Put back</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((rate) => (
              <RateLine key={rate.id} rate={rate} suggestion={suggestions.get(rate.id)} />
            ))}
          </tbody>
        </table>
        <KindRates job={job} specification={specification} />
      </div>
    </div>
  )
}

/** What is typed or taken here rests on no finished job of the shop. */
function change({ id, basis }: Rate, perHour: number, source: string) {
  putRecord('Change a rate', 'rates', { id, basis, perHour, source })
}

function RateLine(props: { readonly rate: Rate; readonly suggestion: RateSuggestion | undefined }) {
  const { rate, suggestion } = props
  const standard = defaultRate(rate.id)
  const isChanged = standard !== undefined && standard.perHour !== rate.perHour
  return (
    <tr className={isChanged ? 'changed-row' : undefined}>
      <td>{rateName(rate.id)}</td>
      <td>
        <EntryField
          label={`${rateName(rate.id)}, in an hour`}
          isBare
          shown={String(rate.perHour)}
          read={decimalNumber(0.02, 100_000)}
          unit={basisWords[rate.basis]}
          width="short"
          onCommit={(value) => change(rate, value, 'set by the shop')}
        />
      </td>
      <td className="quiet">
        {rate.own === undefined ? null : (
          <strong>{rate.own.jobs === 1 ? '1 own job. ' : `${rate.own.jobs} own jobs. `}</strong>
        )}
        {rate.source}
      </td>
      <td>
        {suggestion === undefined ? (
          <span className="quiet">–</span>
        ) : (
          <Button
            className="plain-button"
            onPress={() => change(rate, suggestion.suggestedPerHour, suggestion.source)}
          >
            Take {suggestion.suggestedPerHour} ({suggestion.steps} steps)
          </Button>
        )}
      </td>
      <td>
        {isChanged ? (
          <Button className="plain-button" onPress={() => change(rate, standard.perHour, standard.source)}>
            Put back {standard.perHour}
          </Button>
        ) : null}
      </td>
    </tr>
  )
}

/** Rates of an added part (`cutIn`) are used wherever there is a coat; they are always shown. */
function isUsed(id: string, used: ReadonlySet<string>): boolean {
  const [name = ''] = id.split('-')
  return used.has(id) || used.has(name) || name in addedWords
}

/** Of a rate, from its id: `Coat: crown`. */
export function rateName(id: string): string {
  const [name = '', on] = id.split('-')
  // A name that is no operation finds no words, and stands for itself.
  const words = addedWords[name] ?? operationWords[name as Operation] ?? name
  return on === undefined ? words : `${words}: ${placeNames[on] ?? on}`
}
