import { useState } from 'react'
import { Button } from 'react-aria-components'
import { defaultRate, defaultRates } from '../../../core/price/default-rates.ts'
import {
  addedRateWords,
  rateFromUnits,
  rateInUnits,
  rateName,
  rateUnit,
} from '../../../core/price/rate-names.ts'
import { type RateSuggestion, rateSuggestions } from '../../../core/progress/rate-suggestions.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Rate } from '../../../core/project/shop-records.ts'
import type { Specification } from '../../../core/specification/types.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord } from '../parts/edits.ts'
import { decimalNumber } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { KindRates } from './KindRates.tsx'

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
                <span className="unseen">Back to the usual</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((rate) => (
              <RateLine
                key={rate.id}
                rate={rate}
                suggestion={suggestions.get(rate.id)}
                system={job.header.unitSystem}
              />
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

function RateLine(props: {
  readonly rate: Rate
  readonly suggestion: RateSuggestion | undefined
  readonly system: LengthUnitSystem
}) {
  const { rate, suggestion, system } = props
  const inUnits = (perHour: number) => rateInUnits({ ...rate, perHour }, system)
  const standard = defaultRate(rate.id)
  const isChanged = standard !== undefined && standard.perHour !== rate.perHour
  return (
    <tr className={isChanged ? 'changed-row' : undefined}>
      <td>{rateName(rate.id)}</td>
      <td>
        <EntryField
          label={`${rateName(rate.id)}, in an hour`}
          isBare
          shown={String(rateInUnits(rate, system))}
          read={decimalNumber(0.005, 100_000)}
          unit={`${rateUnit(rate.basis, system)} an hour`}
          width="short"
          onCommit={(value) => change(rate, rateFromUnits(rate.basis, value, system), 'set by the shop')}
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
            Take {inUnits(suggestion.suggestedPerHour)} ({suggestion.steps} steps)
          </Button>
        )}
      </td>
      <td>
        {isChanged ? (
          <Button className="plain-button" onPress={() => change(rate, standard.perHour, standard.source)}>
            Back to {inUnits(standard.perHour)}
          </Button>
        ) : null}
      </td>
    </tr>
  )
}

/** Rates of an added part (`cutIn`) are used wherever there is a coat; they are always shown. */
function isUsed(id: string, used: ReadonlySet<string>): boolean {
  const [name = ''] = id.split('-')
  return used.has(id) || used.has(name) || name in addedRateWords
}
