import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { priceJob } from '../../../core/agreement/whole-price.ts'
import { records } from '../../../core/project/job.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { addDays } from '../../../core/time/local-date.ts'
import { ask } from '../../bridge/client.ts'
import { Choice } from '../../panels/parts/Choice.tsx'
import { EntryField } from '../../panels/parts/EntryField.tsx'
import { dateEntry, decimalNumber, wholeNumber } from '../../panels/parts/entries.ts'
import { jobStore } from '../../state/app.ts'
import { changeListed } from '../job-book.ts'
import type { BookWork } from './book-work.ts'
import { planAgain } from './plan-again.ts'
import { startAnswer } from './start-answer.ts'

const plainHours = 'hours'
const usualHours = 80

/** “When could I start a job of 80 hours?”, for a number of hours or for a job of the book. */
export function StartQuestion({ work }: { readonly work: BookWork }) {
  const { jobs, atWork, shop, today } = work
  const crew = records(shop.crew).length
  const [chosen, setChosen] = useState<string>(plainHours)
  const [typed, setTyped] = useState(usualHours)
  const [people, setPeople] = useState(Math.min(2, Math.max(1, crew)))
  const [from, setFrom] = useState(addDays(today, 1))
  const read = useJobHours(chosen === plainHours ? null : chosen)
  const hours = chosen === plainHours ? typed : (read?.hours ?? null)
  const answer = useMemo(
    () =>
      hours === null || crew === 0
        ? null
        : startAnswer(shop, atWork, { hours, people, from, jobId: read?.jobId ?? null }),
    [shop, atWork, hours, people, from, read, crew],
  )
  const open = jobs.filter(({ stage }) => stage !== 'lost' && stage !== 'finished' && stage !== 'paid')
  const hasPlan = atWork.some(({ jobKey }) => jobKey === chosen)
  const startsOn = answer?.startsOn ?? null
  return (
    <section className="block" aria-label="When could a job start">
      <h2>When could I start?</h2>
      <div className="field-grid">
        <Choice
          label="For"
          options={[
            { id: plainHours, label: 'A number of hours' },
            ...open.map(({ jobKey, title }) => ({ id: jobKey, label: title })),
          ]}
          chosen={chosen}
          onChoose={setChosen}
        />
        {chosen === plainHours ? (
          <EntryField
            label="Hours of work"
            shown={String(typed)}
            read={decimalNumber(1, 20_000)}
            width="short"
            onCommit={setTyped}
          />
        ) : null}
        <EntryField
          label="People"
          shown={String(people)}
          read={wholeNumber(1, Math.max(1, crew))}
          width="short"
          onCommit={setPeople}
        />
        <EntryField label="Not before" kind="date" shown={from} read={dateEntry} onCommit={setFrom} />
      </div>
      <div role="status" className="start-answer">
        {crew === 0 ? <p>Nobody is on the shop sheet yet. Add people there first.</p> : null}
        {chosen !== plainHours && hours !== null ? <p>{hours} hours of work by its steps.</p> : null}
        {answer?.sentences.map((sentence, index) => (
          <p key={sentence}>{index === 0 ? <strong>{sentence}</strong> : sentence}</p>
        ))}
      </div>
      {chosen === plainHours || hasPlan || startsOn === null ? null : (
        <div className="button-row">
          <Button className="act-button" onPress={() => void startThen(chosen, startsOn)}>
            Let it start {dateWords(startsOn, shop.header.unitSystem)} and look at its plan
          </Button>
        </div>
      )}
      <p className="quiet">
        Days are those of the people on the shop sheet, without setting up and leaving. A day with any work on
        another job is not counted. Drying is not in it: the plan of the job itself says how long it takes.
      </p>
    </section>
  )
}

interface JobHours {
  readonly jobKey: string
  readonly jobId: string
  readonly hours: number
}

/** Of all steps of a job of the book, in whole hours; only this one job is read. */
function useJobHours(jobKey: string | null): JobHours | null {
  const [read, setRead] = useState<JobHours | null>(null)
  useEffect(() => {
    if (jobKey === null) return
    void ask('openJob', { jobKey }).then((opened) => {
      if (!opened.ok) return jobStore.refuse(opened.problem)
      const { job } = opened.value
      setRead({ jobKey, jobId: job.header.id, hours: Math.ceil(priceJob(job).minutes / 60) })
    })
  }, [jobKey])
  return read !== null && read.jobKey === jobKey ? read : null
}

async function startThen(jobKey: string, startsOn: string): Promise<void> {
  await changeListed(jobKey, 'Start on another day', { startsOn })
  await planAgain(jobKey)
}
