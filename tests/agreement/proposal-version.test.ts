import { expect, test } from 'vitest'
import { nextVersion, type Offer, offerMark, proposalPaperId } from '../../core/agreement/proposal-version.ts'
import { moneyOf } from '../../core/agreement/taxed-money.ts'
import type { Dealing } from '../../core/project/agreement-records.ts'
import { tableOf } from '../../core/project/empty-job.ts'
import type { Issued } from '../../core/project/issued-records.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { dealingId } from './random-deals.ts'

function offer(beforeTax: number): Offer {
  return {
    lines: [{ label: 'Study', ...moneyOf(beforeTax, 0) }],
    options: [],
    steps: [{ name: 'All', percent: 100, when: '' }],
  }
}

/** `p` prints the offer, `q` writes it down as a quote; the versions under which that is done. */
function versions(...given: readonly (readonly ['p' | 'q', Offer])[]): readonly number[] {
  const issued: Issued[] = []
  const dealings: Dealing[] = []
  return given.map(([way, offered]) => {
    const job = { ...plainJob(), issued: tableOf(issued), dealings: tableOf(dealings) }
    const mark = offerMark(offered)
    const version = nextVersion(job, mark, way === 'p' ? 'paper' : 'quote')
    if (way === 'p') {
      const body = { version: 2, number: null, name: 'Proposal', size: 'letter', html: '' } as const
      issued.push({
        id: proposalPaperId(version, mark),
        kind: 'estimate',
        issuedAt: '2027-03-01T08:00',
        body,
      })
    } else {
      const id = dealingId(`quote-${dealings.length}`)
      dealings.push({
        id,
        kind: 'quoted',
        on: '2027-03-01',
        number: version,
        validUntil: null,
        ...toArrays(offered),
      })
    }
    return version
  })
}

function toArrays({ lines, options, steps }: Offer) {
  return { lines: [...lines], options: [...options], steps: [...steps] }
}

const [first, second] = [offer(100), offer(200)]

test('what was printed and is written down as a quote has one version, whichever came first', () => {
  expect(versions(['p', first], ['q', first])).toEqual([1, 1])
  expect(versions(['q', first], ['p', first])).toEqual([1, 1])
  expect(versions(['p', first], ['q', first], ['q', second], ['p', second])).toEqual([1, 1, 2, 2])
})

test('another offer, and the same offer given out the same way once more, is one version more', () => {
  expect(versions(['p', first], ['q', second])).toEqual([1, 2])
  expect(versions(['q', first], ['p', second], ['q', second])).toEqual([1, 2, 2])
  expect(versions(['p', first], ['p', first], ['q', first], ['q', first])).toEqual([1, 2, 2, 3])
})
