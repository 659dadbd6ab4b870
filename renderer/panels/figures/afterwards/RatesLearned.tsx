import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { OpenedJob } from '../../../../core/contract/requests.ts'
import { rateName } from '../../../../core/price/rate-names.ts'
import { type OwnRate, ownRatesWith, shopWithJob } from '../../../../core/progress/afterwards/own-jobs.ts'
import { type Job, type RecordOf, records } from '../../../../core/project/job.ts'
import { succeed } from '../../../../core/project/problem.ts'
import { sameValue } from '../../../../core/project/same-value.ts'
import type { Rate } from '../../../../core/project/shop-records.ts'
import { formatMinutes } from '../../../../core/units/duration.ts'
import { readShop, storeInShop } from '../../../state/other-jobs.ts'

/** What the minutes of this job say of the shop's rates; each is taken over into the shop sheet, or not. */
export function RatesLearned(props: { readonly job: Job; readonly own: RecordOf<'ownJobs'> }) {
  const { job, own } = props
  const [shop, setShop] = useState<OpenedJob | null>(null)
  const [before, setBefore] = useState<ReadonlyMap<string, Rate>>(new Map())
  useEffect(() => void readShop().then(setShop), [])
  if (shop === null) return null
  const isKept = shop.job.ownJobs[own.id] !== undefined
  const shown = ownRatesWith(shop.job, own)

  async function store(change: (shop: Job) => Job) {
    if (shop === null) return
    await storeInShop(shop, succeed(change(shop.job)))
    setShop(await readShop())
  }

  function take({ rate, suggested }: OwnRate) {
    setBefore(new Map([...before, [rate.id, rate]]))
    void store((sheet) => withRate(shopWithJob(sheet, own), suggested))
  }

  if (job.header.isDemonstration)
    return <Said>The demonstration is not a real job: it says nothing about the shop’s rates.</Said>
  if (shown.length === 0)
    return (
      <Said>
        Nothing yet: write down the minutes of a step at Site when it is done, and what it says about its rate
        shows here.
      </Said>
    )
  return (
    <section className="block" aria-label="Rates">
      <h3>What it says about the shop’s rates</h3>
      <p className="quiet">
        A rate taken over holds for the next jobs. The figure lies between the shop’s and that of its own
        jobs, nearer to theirs the more was worked.
      </p>
      <table className="sum-table compared-table">
        <thead>
          <tr>
            <th scope="col">Work</th>
            <th scope="col" className="number">
              Counted
            </th>
            <th scope="col" className="number">
              Worked
            </th>
            <th scope="col" className="number">
              The shop’s rate
            </th>
            <th scope="col" className="number">
              Rests on
            </th>
            <th scope="col">
              <span className="unseen">Take it over</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((each) => (
            <RateRow
              key={each.rate.id}
              own={each}
              before={before.get(each.rate.id) ?? null}
              onTake={() => take(each)}
              onPutBack={(rate) => void store((sheet) => withRate(sheet, rate))}
            />
          ))}
        </tbody>
      </table>
      <div className="button-row">
        <Button className="plain-button" onPress={() => void store((sheet) => shopWithJob(sheet, own))}>
          {isKept ? 'Keep this job again in the shop sheet' : 'Keep this job in the shop sheet'}
        </Button>
      </div>
      <p className="quiet" role="status">
        {keptWords(records(shop.job.ownJobs).length, isKept)}
      </p>
    </section>
  )
}

function Said({ children }: { readonly children: string }) {
  return (
    <section className="block" aria-label="Rates">
      <h3>What it says about the shop’s rates</h3>
      <p className="quiet">{children}</p>
    </section>
  )
}

function withRate(sheet: Job, rate: Rate): Job {
  return { ...sheet, rates: { ...sheet.rates, [rate.id]: rate } }
}

function RateRow(props: {
  readonly own: OwnRate
  readonly before: Rate | null
  readonly onTake: () => void
  readonly onPutBack: (rate: Rate) => void
}) {
  const { own, before, onTake, onPutBack } = props
  const { rate, suggested, plannedMinutes, workedMinutes } = own
  const isTaken = sameValue(rate, suggested)
  return (
    <tr>
      <td>{rateName(rate.id)}</td>
      <td className="number">{formatMinutes(plannedMinutes)}</td>
      <td className="number">{formatMinutes(workedMinutes)}</td>
      <td className="number">{rate.perHour}</td>
      <td className="number">{jobWords(rate.own?.jobs ?? 0)}</td>
      <td>
        {isTaken ? (
          before === null || sameValue(before, rate) ? (
            'taken over'
          ) : (
            <Button className="plain-button" onPress={() => onPutBack(before)}>
              Put back {before.perHour}
            </Button>
          )
        ) : (
          <Button className="plain-button" onPress={onTake}>
            Take {suggested.perHour} ({jobWords(suggested.own?.jobs ?? 0)})
          </Button>
        )}
      </td>
    </tr>
  )
}

function jobWords(count: number): string {
  if (count === 0) return 'no own job'
  return count === 1 ? '1 job' : `${count} jobs`
}

function keptWords(kept: number, isKept: boolean): string {
  const jobs = kept === 1 ? 'one finished job' : `${kept} finished jobs`
  const enough = kept >= 5 ? ' How far jobs come out is worked out from them.' : ''
  return `The shop sheet holds ${jobs}${isKept ? ', this one among them' : ''}.${enough}`
}
