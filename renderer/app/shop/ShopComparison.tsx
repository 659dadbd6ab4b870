import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { OpenedJob } from '../../../core/contract/requests.ts'
import type { Job } from '../../../core/project/job.ts'
import { type ShopDifference, shopDifferences, withLines } from '../../../core/project/shop-differences.ts'
import { OneOf } from '../../panels/parts/OneOf.tsx'
import { Tick } from '../../panels/parts/Tick.tsx'
import { jobStore, useJob } from '../../state/app.ts'
import { readShop, storeInShop } from '../../state/other-jobs.ts'
import { differenceTitle, partNames, valueWords } from './difference-words.ts'

type Direction = 'intoJob' | 'intoShop'

/** Where this job's copy and the shop sheet differ, line by line; what is ticked is taken over, one way or the other. */
export function ShopComparison() {
  const job = useJob()
  const [shop, setShop] = useState<OpenedJob | null>(null)
  const [direction, setDirection] = useState<Direction>('intoJob')
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set())
  const load = async () => setShop((await readShop()) ?? shop)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the shop sheet is asked for when the list is opened
  useEffect(() => void load(), [])
  if (shop === null) return <p className="quiet">Reading the shop sheet …</p>
  const [from, to] = direction === 'intoJob' ? [shop.job, job] : [job, shop.job]
  const lines = shopDifferences(to, from)
  const chosen = lines.filter(({ key }) => ticked.has(key))
  if (lines.length === 0) return <p className="quiet">This job’s copy is the same as the shop sheet.</p>

  async function take() {
    setTicked(new Set())
    if (direction === 'intoJob') {
      jobStore.perform(`Take ${lineCount(chosen.length)} from the shop sheet`, withLines(to, chosen))
      return
    }
    if (shop !== null) await storeInShop(shop, withLines(to, chosen))
    await load()
  }

  return (
    <section className="shop-lines" aria-label="Differences from the shop sheet">
      <OneOf
        label="Checked lines go"
        options={[
          { id: 'intoJob', label: 'From the shop into this job' },
          { id: 'intoShop', label: 'From this job into the shop' },
        ]}
        chosen={direction}
        onChoose={(next) => {
          setDirection(next)
          setTicked(new Set())
        }}
      />
      <DifferenceTable
        job={job}
        lines={lines}
        isIntoJob={direction === 'intoJob'}
        ticked={ticked}
        onTick={setTicked}
      />
      <div className="button-row">
        <Button className="act-button" isDisabled={chosen.length === 0} onPress={() => void take()}>
          {direction === 'intoJob' ? 'Bring this job up to date' : 'Change the shop sheet'}
          {chosen.length === 0 ? '' : `, ${lineCount(chosen.length)}`}
        </Button>
        <Button className="plain-button" onPress={() => setTicked(new Set(lines.map(({ key }) => key)))}>
          Check all
        </Button>
      </div>
    </section>
  )
}

function DifferenceTable(props: {
  readonly job: Job
  readonly lines: readonly ShopDifference[]
  readonly isIntoJob: boolean
  readonly ticked: ReadonlySet<string>
  readonly onTick: (ticked: ReadonlySet<string>) => void
}) {
  const { job, lines, isIntoJob, ticked, onTick } = props
  const set = (key: string, isOn: boolean) =>
    onTick(new Set(isOn ? [...ticked, key] : [...ticked].filter((each) => each !== key)))
  return (
    <div className="shop-table">
      <table className="pick-table">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">{isIntoJob ? 'This job' : 'The shop'}</th>
            <th scope="col">{isIntoJob ? 'The shop' : 'This job'}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, index) => (
            <DifferenceRow
              key={line.key}
              line={line}
              title={differenceTitle(job, line)}
              heading={lines[index - 1]?.part === line.part ? null : partNames[line.part]}
              isOn={ticked.has(line.key)}
              onTick={(isOn) => set(line.key, isOn)}
            />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function DifferenceRow(props: {
  readonly line: ShopDifference
  readonly title: string
  readonly heading: string | null
  readonly isOn: boolean
  readonly onTick: (isOn: boolean) => void
}) {
  const { here, there } = props.line
  return (
    <>
      {props.heading === null ? null : (
        <tr>
          <th scope="rowgroup" colSpan={3}>
            {props.heading}
          </th>
        </tr>
      )}
      <tr>
        <td>
          <Tick isOn={props.isOn} onChange={props.onTick}>
            {props.title}
          </Tick>
        </td>
        <td>{valueWords(here, there)}</td>
        <td>{valueWords(there, here)}</td>
      </tr>
    </>
  )
}

function lineCount(count: number): string {
  return count === 1 ? '1 line' : `${count} lines`
}
