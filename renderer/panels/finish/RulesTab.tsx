import { useMemo, useState } from 'react'
import { Button, Input, Label, SearchField } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { isSafetyRule } from '../../../core/project/safety-limits.ts'
import { roomOrders } from '../../../core/project/vocabulary.ts'
import { type RuleTheme, ruleThemes } from '../../../core/specification/rule-facts.ts'
import { changedRule, type RuleState, ruleBook } from '../../../core/specification/rule-settings.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { dateWordsWithYear } from '../../../core/time/date-words.ts'
import { Callout } from '../parts/Callout.tsx'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHouseRules, putRecord, removeRecord } from '../parts/edits.ts'
import { Tick } from '../parts/Tick.tsx'
import { roomOrderNotes, roomOrderWords } from '../parts/words.ts'
import { LeaveOutForm } from './LeaveOutForm.tsx'
import { PassRules } from './PassRules.tsx'
import { countUses, numberHint, strictNumber } from './rule-entries.ts'

const themeWords: Readonly<Record<RuleTheme, string>> = {
  dust: 'Dust',
  paint: 'Old paint',
  plaster: 'Plaster and board',
  calcimine: 'Calcimine',
  wallpaper: 'Wallpaper',
  trim: 'Trim and doors',
  sash: 'Sash',
  stains: 'Stains',
  metal: 'Metal',
  coats: 'Coats',
  order: 'Order of work',
  keptItems: 'What stays',
  air: 'Air and drying',
  lead: 'Lead',
  asbestos: 'Asbestos',
  difficulty: 'Difficulty',
}

/** The rule book as this job keeps it: switched, with the owner's own numbers, and each change can be put back. */
export function RulesTab({
  job,
  specification,
  hasSafety = true,
}: {
  readonly job: Job
  readonly specification: Specification
  /** Rules that protect people belong to one house; the shop sheet leaves them out. */
  readonly hasSafety?: boolean
}) {
  const [search, setSearch] = useState('')
  const [onlyChanged, setOnlyChanged] = useState(false)
  const used = useMemo(() => countUses(specification), [specification])
  const book = useMemo(() => ruleBook(job), [job])
  const wanted = search.trim().toLowerCase()
  const shown = book.filter(
    ({ facts, changed }) =>
      (!onlyChanged || changed) &&
      (hasSafety || !isSafetyRule(facts.id)) &&
      [facts.title, facts.found, facts.reason].some((text) => text.toLowerCase().includes(wanted)),
  )
  return (
    <div className="pane pane-wide">
      <div className="tab-intro rules-intro">
        <SearchField className="entry" value={search} onChange={setSearch}>
          <Label>Find a rule</Label>
          <Input />
        </SearchField>
        <Choice
          label="Order inside a room"
          options={optionsOf(roomOrders, roomOrderWords, roomOrderNotes)}
          chosen={job.houseRules.roomOrder}
          onChoose={(roomOrder) => changeHouseRules('Change the order inside rooms', { roomOrder })}
        />
        <PassRules passes={job.houseRules.passes} />
        <Tick isOn={onlyChanged} onChange={setOnlyChanged}>
          Only what was changed ({book.filter((rule) => rule.changed).length})
        </Tick>
      </div>
      <div className="scroll">
        {ruleThemes.map((theme) => {
          const rules = shown.filter(({ facts }) => facts.theme === theme)
          return rules.length === 0 ? null : (
            <section key={theme} className="rule-theme">
              <h3>{themeWords[theme]}</h3>
              {rules.map((rule) => (
                <RuleEntry key={rule.facts.id} job={job} rule={rule} uses={used.get(rule.facts.id) ?? 0} />
              ))}
            </section>
          )
        })}
        {shown.length === 0 ? <p className="quiet tab-pad">No rule of the book says that.</p> : null}
      </div>
    </div>
  )
}

function changeRule(job: Job, { facts }: RuleState, change: Parameters<typeof changedRule>[2]): void {
  const setting = changedRule(job, facts.id, change)
  if (setting === null) putBack(facts.id, facts.title)
  else putRecord(`Change the rule “${facts.title}”`, 'rules', setting)
}

function putBack(id: string, title: string): void {
  removeRecord(`Reset the rule “${title}”`, 'rules', id)
}

/** A safety rule follows the house; it is left out only for a written reason, which stands where the switch would be. */
function SafetySwitch({ job, rule }: { readonly job: Job; readonly rule: RuleState }) {
  const [isAsking, setIsAsking] = useState(false)
  const { leftOut, raised, facts } = rule
  if (isAsking) {
    return (
      <LeaveOutForm
        title={facts.title}
        onCancel={() => setIsAsking(false)}
        onLeaveOut={(reason) => {
          changeRule(job, rule, { leftOut: reason })
          setIsAsking(false)
        }}
      />
    )
  }
  return (
    <>
      {raised === '' ? null : (
        <Callout kind="wait" title="Put right">
          {raised}
        </Callout>
      )}
      {leftOut === null ? (
        <p>
          <span className="quiet">
            Always on: it follows the year the house was built and what was found. Its numbers can be made
            stricter, not weaker than the published limits, and nothing of it goes into the next job.{' '}
          </span>
          <Button className="plain-button" onPress={() => setIsAsking(true)}>
            Leave out with a written reason
          </Button>
        </p>
      ) : (
        <Callout kind="stop" title="Left out on this job">
          Tested by {leftOut.testedBy} on {dateWordsWithYear(leftOut.testedOn, job.header.unitSystem)}, report{' '}
          {leftOut.reportNumber}: {leftOut.found}
        </Callout>
      )}
    </>
  )
}

function RuleEntry(props: { readonly job: Job; readonly rule: RuleState; readonly uses: number }) {
  const { job, rule, uses } = props
  const { facts, on, changed, numbers } = rule
  return (
    <article className={`rule${changed ? ' rule-changed' : ''}${on ? '' : ' rule-off'}`}>
      <header>
        {rule.safety ? (
          <strong>{facts.title}</strong>
        ) : (
          <Tick isOn={on} onChange={(isOn) => changeRule(job, rule, { on: isOn })}>
            <strong>{facts.title}</strong>
          </Tick>
        )}
        <span className="quiet">{uses === 0 ? 'behind no step here' : `behind ${uses} steps here`}</span>
        {changed ? (
          <Button className="plain-button" onPress={() => putBack(facts.id, facts.title)}>
            Changed · reset
          </Button>
        ) : null}
      </header>
      {rule.safety ? <SafetySwitch job={job} rule={rule} /> : null}
      {facts.found === '' ? null : (
        <p>
          <span className="quiet">When: </span>
          {facts.found}
        </p>
      )}
      <p>
        {facts.reason} <span className="quiet">({facts.source})</span>
      </p>
      {numbers.length === 0 ? null : (
        <div className="rule-numbers">
          {numbers.map((number) => (
            <EntryField
              key={number.name}
              label={number.meaning}
              width="short"
              unit={number.unit}
              shown={String(number.current)}
              read={strictNumber(number)}
              hint={numberHint(number)}
              onCommit={(value) => changeRule(job, rule, { numbers: { [number.name]: value } })}
            />
          ))}
        </div>
      )}
    </article>
  )
}
