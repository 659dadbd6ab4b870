import './what-changed.css'
import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { RoomChange, WhatChanged } from '../../../../core/progress/what-changed.ts'
import { formatMinutes } from '../../../../core/units/duration.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { useJob } from '../../../state/app.ts'
import { dismissChange } from '../../../state/last-change.ts'
import { searchFor } from '../../../state/planner.ts'
import { useWhatChanged } from './use-what-changed.ts'

/** What the last change did to rooms, days and money, along the lower edge of a station until it is closed or the next change. */
export function WhatChangedCard() {
  const job = useJob()
  const shown = useWhatChanged()
  const [isByRoom, setByRoom] = useState(false)
  return (
    <div aria-live="polite">
      {shown === null ? null : (
        <section className="change-card" aria-label="What changed">
          <div className="change-words">
            <strong>{shown.name}</strong>
            <ul>
              {shown.what.lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </div>
          <Bars what={shown.what} />
          <div className="button-row">
            {shown.lacksPlan ? (
              <Button className="plain-button" onPress={() => searchFor('present', job)}>
                What of the days?
              </Button>
            ) : null}
            {shown.what.rooms.length === 0 ? null : (
              <Button className="plain-button" aria-expanded={isByRoom} onPress={() => setByRoom(!isByRoom)}>
                By room
              </Button>
            )}
            <Button className="plain-button" aria-label="Close what changed" onPress={dismissChange}>
              Close
            </Button>
          </div>
          {isByRoom ? <ByRoom rooms={shown.what.rooms} /> : null}
        </section>
      )}
    </div>
  )
}

const bar = { rooms: 4, row: 13, names: 96, across: 120 }

/** Two bars for each of the rooms that change most: its hours before and after, or its price where no hour changes. */
function Bars({ what }: { readonly what: WhatChanged }) {
  const amount = what.rooms.some(({ before, after }) => hours(before.minutes) !== hours(after.minutes))
    ? 'minutes'
    : 'cents'
  const most = what.rooms
    .toSorted((one, other) => moved(other) - moved(one))
    .slice(0, bar.rooms)
    .filter((room) => moved(room) > 0)
  if (most.length === 0) return null
  function moved({ before, after }: RoomChange): number {
    return Math.abs(after[amount] - before[amount])
  }
  const largest = Math.max(...most.flatMap(({ before, after }) => [before[amount], after[amount]]))
  const length = (value: number) => (value / largest) * bar.across
  return (
    <svg
      className="change-bars"
      width={bar.names + bar.across}
      height={most.length * bar.row}
      aria-hidden="true"
    >
      {most.map(({ roomId, name, before, after }, index) => (
        <g key={roomId ?? 'house'} transform={`translate(0 ${index * bar.row})`}>
          <text x={bar.names - 6} y={10} textAnchor="end">
            {name.length > 15 ? `${name.slice(0, 14)}…` : name}
          </text>
          <rect className="change-was" x={bar.names} y={1} width={length(before[amount])} height={5} />
          <rect className="change-is" x={bar.names} y={6} width={length(after[amount])} height={5} />
        </g>
      ))}
    </svg>
  )
}

function hours(minutes: number): number {
  return Math.round(minutes)
}

/** Where the price changes most first. */
function ByRoom({ rooms }: { readonly rooms: readonly RoomChange[] }) {
  const moved = ({ before, after }: RoomChange) => Math.abs(after.cents - before.cents)
  const byPrice = rooms.toSorted((one, other) => moved(other) - moved(one))
  return (
    <div className="change-rooms scroll">
      <table className="before-after">
        <thead>
          <tr>
            <th scope="col">Room</th>
            <th scope="col" className="number">
              Steps
            </th>
            <th scope="col" className="number">
              Hours
            </th>
            <th scope="col" className="number">
              Price before tax
            </th>
          </tr>
        </thead>
        <tbody>
          {byPrice.map(({ roomId, name, before, after }) => (
            <tr key={roomId ?? 'house'}>
              <th scope="row">{name}</th>
              <td className="number">{fromTo(String(before.steps), String(after.steps))}</td>
              <td className="number">
                {fromTo(formatMinutes(before.minutes), formatMinutes(after.minutes))}
              </td>
              <td className="number">{fromTo(formatCents(before.cents), formatCents(after.cents))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function fromTo(before: string, after: string): string {
  return before === after ? after : `${before} → ${after}`
}
