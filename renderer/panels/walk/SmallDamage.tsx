import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { resolveExisting } from '../../../core/project/scopes.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { bookOf } from '../../../core/specification/rule-book.ts'
import { allRules } from '../../../core/specification/rule-list.ts'
import { allowancesOf, type RoomAllowances } from '../../../core/specification/rules/allowances.ts'
import { takenUntilSaid } from '../../../core/specification/taken-until-said.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { command } from '../parts/edits.ts'
import { decimalNumber, orNothing } from '../parts/entries.ts'

const fields: readonly {
  readonly name: keyof RoomAllowances
  readonly label: string
  readonly unit: string
}[] = [
  { name: 'dings', label: 'Nail holes and dings on walls', unit: 'per 100 sq ft' },
  { name: 'trimDings', label: 'Nail holes and dents in trim', unit: 'per 100 ft' },
  { name: 'joints', label: 'Open joints to caulk', unit: 'ft per 100 ft' },
  { name: 'touchUp', label: 'Touched up at the end', unit: '% of what is painted' },
]

const none: NonNullable<Room['allowances']> = { dings: null, trimDings: null, joints: null, touchUp: null }

/** What every room has of small damage, by the house's rules or by numbers of its own; an emptied field is the house's again. */
export function SmallDamage(props: {
  readonly job: Job
  readonly room: Room
  readonly surfaces: readonly SurfaceQuantity[]
}) {
  const { job, room, surfaces } = props
  const usual = useMemo(() => houseAllowances(job, room, surfaces), [job, room, surfaces])
  const own = room.allowances ?? none
  const set = (change: Partial<typeof none>) => {
    const next = { ...own, ...change }
    const allowances = Object.values(next).every((each) => each === null) ? null : next
    command(`Change the small damage of ${room.name}`, {
      kind: 'setRoom',
      roomId: room.id,
      change: { allowances },
    })
  }
  return (
    <section className="block" aria-label="Small damage">
      <h3>Small damage every room has</h3>
      <p className="quiet">
        Counted on without being written down; what you write down counts towards it. The numbers are the
        house's until you type the room's own.
      </p>
      <div className="field-grid small-damage">
        {fields.map(({ name, label, unit }) => (
          <EntryField
            key={name}
            label={label}
            shown={String(own[name] ?? usual[name])}
            read={orNothing(decimalNumber(0, name === 'touchUp' ? 100 : 1000))}
            width="short"
            unit={unit}
            hint={own[name] === null ? "the house's" : `the house's is ${usual[name]}`}
            onCommit={(value) => set({ [name]: value })}
          />
        ))}
      </div>
      {room.allowances === null ? null : (
        <Button className="plain-button" onPress={() => set(none)}>
          As in the rest of the house
        </Button>
      )}
    </section>
  )
}

/** What the room would have without numbers of its own, by what its walls are of. */
function houseAllowances(job: Job, room: Room, surfaces: readonly SurfaceQuantity[]): RoomAllowances {
  const wall = surfaces.find(({ surfaceClass }) => surfaceClass === 'walls')
  const said = wall && resolveExisting(job, wall.surface)?.substrate
  const substrate = said ?? takenUntilSaid(job.header, 'walls').substrate
  return allowancesOf(job, { ...room, allowances: null }, bookOf(job, allRules), substrate)
}
