import { Button } from 'react-aria-components'
import { girthPolicies, type Job, openingPolicies } from '../../../core/project/job.ts'
import {
  compareGirthPolicies,
  compareOpeningPolicies,
  type PolicyFigure,
} from '../../../core/quantities/policy-comparison.ts'
import { formatArea } from '../../../core/units/area.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { changeHouseRules } from '../parts/edits.ts'
import { girthPolicyWords, openingPolicyWords } from '../parts/words.ts'

/** The published rule that openings and narrow trim are measured by; all of them are laid side by side where the quantities stand. */
export function Policies(props: {
  readonly job: Job
  readonly isComparing: boolean
  readonly onCompare: (isComparing: boolean) => void
}) {
  const { job, isComparing, onCompare } = props
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
      <Button className="plain-button" aria-pressed={isComparing} onPress={() => onCompare(!isComparing)}>
        {isComparing ? 'Back to the quantities' : 'All rules side by side'}
      </Button>
    </section>
  )
}

/** Each rule takes the whole house off once more, so this is worked out only while it is looked at. */
export function PoliciesSideBySide({ job }: { readonly job: Job }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reached by keys
    <section className="scroll policy-tables" aria-label="Rules side by side" tabIndex={0}>
      <PolicyTable
        title="Wall work, by rule for openings"
        words={openingPolicyWords}
        figures={compareOpeningPolicies(job)}
        job={job}
      />
      <PolicyTable
        title="Trim, by rule for narrow girths"
        words={girthPolicyWords}
        figures={compareGirthPolicies(job)}
        job={job}
      />
    </section>
  )
}

function PolicyTable<Policy extends string>(props: {
  readonly title: string
  readonly words: Readonly<Record<Policy, string>>
  readonly figures: readonly PolicyFigure<Policy>[]
  readonly job: Job
}) {
  const { title, words, figures, job } = props
  const system = job.header.unitSystem
  const roomIds = [...new Set(figures.flatMap(({ byRoom }) => [...byRoom.keys()]))]
  return (
    <table className="pick-table">
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">Room</th>
          {figures.map(({ policy, chosen }) => (
            <th key={policy} scope="col" className="number">
              {words[policy]}
              {chosen ? <div className="chosen-rule">this job’s rule</div> : null}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {roomIds.map((roomId) => (
          <tr key={roomId}>
            <td>{job.rooms[roomId]?.name}</td>
            {figures.map(({ policy, byRoom }) => (
              <td key={policy} className="number">
                {formatArea(byRoom.get(roomId) ?? 0, system)}
              </td>
            ))}
          </tr>
        ))}
        <tr className="head-row">
          <td>The whole house</td>
          {figures.map(({ policy, area }) => (
            <td key={policy} className="number">
              {formatArea(area, system)}
            </td>
          ))}
        </tr>
        <tr>
          <td>Against exact</td>
          {figures.map(({ policy, difference }) => (
            <td key={policy} className="number">
              {difference === 0
                ? 'as measured'
                : `${formatArea(Math.abs(difference), system)} ${difference > 0 ? 'more' : 'less'}`}
            </td>
          ))}
        </tr>
        <tr>
          <td>The rule and its source</td>
          {figures.map(({ policy, rule, source }) => (
            <td key={policy} className="quiet policy-rule">
              {rule} Source: {source}.
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  )
}
