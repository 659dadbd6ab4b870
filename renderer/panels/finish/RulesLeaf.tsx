import { useMemo, useState } from 'react'
import { Button, Input, Label, SearchField } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { roomOrders } from '../../../core/project/vocabulary.ts'
import type { RuleTheme } from '../../../core/specification/rule.ts'
import { ruleThemes } from '../../../core/specification/rule.ts'
import { changedRule, type RuleState, ruleBook } from '../../../core/specification/rule-settings.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHouseRules, putRecord, removeRecord } from '../parts/edits.ts'
import { decimalNumber } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { roomOrderNotes, roomOrderWords } from '../parts/words.ts'

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
export function RulesLeaf({
  job,
  specification,
}: {
  readonly job: Job
  readonly specification: Specification
}) {
  const [search, setSearch] = useState('')
  const [onlyChanged, setOnlyChanged] = useState(false)
  const used = useMemo(() => countUses(specification), [specification])
  const book = useMemo(() => ruleBook(job), [job])
  const wanted = search.trim().toLowerCase()
  const shown = book.filter(
    ({ facts, changed }) =>
      (!onlyChanged || changed) &&
      [facts.title, facts.found, facts.reason].some((text) => text.toLowerCase().includes(wanted)),
  )
  return (
    <div className="pane pane-wide">
      <div className="leaf-intro rules-intro">
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
        {shown.length === 0 ? <p className="quiet leaf-pad">No rule of the book says that.</p> : null}
      </div>
    </div>
  )
}

function countUses(specification: Specification): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const step of specification.steps) {
    for (const because of step.because) counts.set(because.ruleId, (counts.get(because.ruleId) ?? 0) + 1)
  }
  return counts
}

function changeRule(job: Job, { facts }: RuleState, change: Parameters<typeof changedRule>[2]): void {
  const setting = changedRule(job, facts.id, change)
  if (setting === null) putBack(facts.id, facts.title)
  else putRecord(`Change the rule “${facts.title}”`, 'rules', setting)
}

function putBack(id: string, title: string): void {
  removeRecord(`Put back the rule “${title}”`, 'rules', id)
}

function RuleEntry(props: { readonly job: Job; readonly rule: RuleState; readonly uses: number }) {
  const { job, rule, uses } = props
  const { facts, on, changed, numbers } = rule
  return (
    <article className={`rule${changed ? ' rule-changed' : ''}${on ? '' : ' rule-off'}`}>
      <header>
        <Tick isOn={on} onChange={(isOn) => changeRule(job, rule, { on: isOn })}>
          <strong>{facts.title}</strong>
        </Tick>
        <span className="quiet">{uses === 0 ? 'behind no step here' : `behind ${uses} steps here`}</span>
        {changed ? (
          <Button className="plain-button" onPress={() => putBack(facts.id, facts.title)}>
            Changed · put back
          </Button>
        ) : null}
      </header>
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
              read={decimalNumber(-1e6, 1e6)}
              hint={number.changed ? `the book says ${number.value} (${number.source})` : number.source}
              onCommit={(value) => changeRule(job, rule, { numbers: { [number.name]: value } })}
            />
          ))}
        </div>
      )}
    </article>
  )
}
