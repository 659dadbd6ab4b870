import { useState } from 'react'
import { Button } from 'react-aria-components'
import { girthPolicies, type Job, openingPolicies } from '../../../core/project/job.ts'
import {
  compareGirthPolicies,
  compareOpeningPolicies,
  type PolicyFigure,
} from '../../../core/quantities/policy-comparison.ts'
import { formatArea } from '../../../core/units/area.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { changeHouseRules } from '../parts/edits.ts'
import { girthPolicyWords, openingPolicyWords } from '../parts/words.ts'

/** The published rule that openings and narrow trim are measured by, and what each of the others would make of this house. */
export function Policies({ job }: { readonly job: Job }) {
  const [isOpen, setOpen] = useState(false)
  const { openingPolicy, girthPolicy } = job.houseRules
  return (
    <section className="block">
      <h3>How openings and narrow trim count</h3>
      <Choice
        label="Openings"
        options={optionsOf(openingPolicies, openingPolicyWords)}
        chosen={openingPolicy}
        onChoose={(id) => changeHouseRules('Change how openings count', { openingPolicy: id })}
      />
      <Choice
        label="Narrow trim"
        options={optionsOf(girthPolicies, girthPolicyWords)}
        chosen={girthPolicy}
        onChoose={(id) => changeHouseRules('Change how narrow trim counts', { girthPolicy: id })}
      />
      <Button className="plain-button" aria-expanded={isOpen} onPress={() => setOpen(!isOpen)}>
        {isOpen ? 'Hide the policies' : 'All policies side by side'}
      </Button>
      {isOpen ? <SideBySide job={job} /> : null}
    </section>
  )
}

/** Each policy takes the whole house off once more, so it is worked out only while it is looked at. */
function SideBySide({ job }: { readonly job: Job }) {
  const system = job.header.unitSystem
  return (
    <>
      <PolicyTable
        title="Wall work, by rule for openings"
        words={openingPolicyWords}
        figures={compareOpeningPolicies(job)}
        system={system}
      />
      <PolicyTable
        title="Trim, by rule for narrow girths"
        words={girthPolicyWords}
        figures={compareGirthPolicies(job)}
        system={system}
      />
    </>
  )
}

function PolicyTable<Policy extends string>(props: {
  readonly title: string
  readonly words: Readonly<Record<Policy, string>>
  readonly figures: readonly PolicyFigure<Policy>[]
  readonly system: LengthUnitSystem
}) {
  return (
    <>
      <h4>{props.title}</h4>
      <table className="sum-table">
        <tbody>
          {props.figures.map((figure) => (
            <tr key={figure.policy}>
              <td>
                {figure.chosen ? <strong>{props.words[figure.policy]}</strong> : props.words[figure.policy]}
                <div className="quiet">
                  {figure.rule} Source: {figure.source}.
                </div>
              </td>
              <td className="number">
                {formatArea(figure.area, props.system)}
                <div className="quiet">{differenceWords(figure.difference, props.system)}</div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}

function differenceWords(difference: number, system: LengthUnitSystem): string {
  if (difference === 0) return 'as measured'
  const area = formatArea(Math.abs(difference), system)
  return difference > 0 ? `${area} more` : `${area} less`
}
