import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import type { KeptItem } from '../../../core/project/survey-records.ts'
import { type KeptProposal, keptProposals } from '../../../core/sketch/kept-proposals.ts'
import { handlingWords } from '../../../core/specification/trade-words.ts'
import { newId } from '../../state/new-id.ts'
import { EntryField } from './EntryField.tsx'
import { command, putRecord, removeRecord } from './edits.ts'
import { wholeNumber } from './entries.ts'
import { KeptDetails } from './KeptDetails.tsx'
import { keptCounts, keptItemWords } from './words.ts'

/** What is in the way and stays in the house, counted room by room, and what is usually there besides. */
export function KeptItems({ job, room }: { readonly job: Job; readonly room: Room }) {
  const [openId, setOpenId] = useState<string | null>(null)
  const items = records(job.keptItems).filter((item) => item.roomId === room.id)
  const proposals = keptProposals(job, room)
  return (
    <section className="block" aria-label="In the way and stays">
      <h3>In the way, and stays</h3>
      <p className={items.length === 0 ? 'quiet' : ''}>
        {items.length === 0
          ? 'Plates, locks, lights, alarms, curtain hardware, hangings: what is counted here comes off, is bagged and labeled, and goes back.'
          : keptCounts(items)}
      </p>
      <Proposals room={room} proposals={proposals} />
      <ul className="kept-list">
        {items.map((item) => (
          <li key={item.id}>
            <KeptLine
              item={item}
              isOpen={item.id === openId}
              onOpen={() => setOpenId(item.id === openId ? null : item.id)}
            />
            {item.id === openId ? <KeptDetails job={job} room={room} item={item} /> : null}
          </li>
        ))}
      </ul>
      <Button
        className="plain-button"
        onPress={() => {
          const item = keptItem(room, {
            kind: 'plate',
            name: keptItemWords.plate,
            count: 1,
            handling: 'takeOff',
          })
          if (putRecord('Add what stays', 'keptItems', item)) setOpenId(item.id)
        }}
      >
        Add something that stays
      </Button>
    </section>
  )
}

function keptItem(room: Room, proposal: KeptProposal): KeptItem {
  return { ...proposal, id: newId('kept'), roomId: room.id, on: { kind: 'room' }, wired: false, note: '' }
}

/** What the openings and the use of the room suggest and nobody has counted, each a press away, or all at once. */
function Proposals(props: { readonly room: Room; readonly proposals: readonly KeptProposal[] }) {
  const { room, proposals } = props
  if (proposals.length === 0) return null
  const take = (taken: readonly KeptProposal[]) =>
    command(
      `Count what stays in ${room.name}`,
      ...taken.map(
        (each) => ({ kind: 'putRecord', collection: 'keptItems', record: keptItem(room, each) }) as const,
      ),
    )
  return (
    <div className="button-row">
      <span className="quiet">Usually there:</span>
      {proposals.map((proposal) => (
        <Button key={proposal.kind} className="plain-button proposal" onPress={() => take([proposal])}>
          + {keptCounts([proposal])}
        </Button>
      ))}
      {proposals.length === 1 ? null : (
        <Button className="act-button" onPress={() => take(proposals)}>
          All of it
        </Button>
      )}
    </div>
  )
}

function KeptLine(props: { readonly item: KeptItem; readonly isOpen: boolean; readonly onOpen: () => void }) {
  const { item, isOpen, onOpen } = props
  const count = (next: number) =>
    putRecord('Change what stays', 'keptItems', { ...item, count: Math.min(1000, next) })
  return (
    <div className="kept-count">
      <Button
        className="plain-button"
        aria-label={item.count === 1 ? `Remove ${item.name}` : `One fewer: ${item.name}`}
        onPress={() =>
          item.count === 1 ? removeRecord('Remove what stays', 'keptItems', item.id) : count(item.count - 1)
        }
      >
        −
      </Button>
      <EntryField
        label={`How many: ${item.name}`}
        isBare
        shown={String(item.count)}
        read={wholeNumber(1, 1000)}
        width="short"
        onCommit={count}
      />
      <Button
        className="plain-button"
        aria-label={`One more: ${item.name}`}
        onPress={() => count(item.count + 1)}
      >
        +
      </Button>
      <span className="kept-name">
        {item.name} <span className="quiet">· {handlingWords[item.handling]}</span>
      </span>
      <Button
        className="plain-button"
        aria-label={`Details: ${item.name}`}
        aria-expanded={isOpen}
        onPress={onOpen}
      >
        {isOpen ? 'Close' : 'Details'}
      </Button>
    </div>
  )
}
