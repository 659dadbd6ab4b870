import { Button } from 'react-aria-components'
import { type HouseRules, type Job, records } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { roomOrders } from '../../../core/project/vocabulary.ts'
import { dateWordsWithYear } from '../../../core/time/date-words.ts'
import { holidaysAhead, withDaysOff } from '../../../core/time/usual-holidays.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { dateEntry, momentEntry, orNothing, timeEntry, wholeNumber } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { roomOrderNotes, roomOrderWords } from '../parts/words.ts'
import { PlanMoneyBlock } from './PlanMoneyBlock.tsx'
import { tryChange } from './trial.ts'

/** When work may go on, how many rooms the household does without, and which rooms were promised back. */
export function SiteRulesTab({ job }: { readonly job: Job }) {
  return (
    <div className="scroll tab-pad site-rules">
      <SiteBlock job={job} />
      <HolidaysBlock job={job} />
      <RoomsBlock job={job} />
      <PlanMoneyBlock job={job} />
    </div>
  )
}

function rule(key: string, name: string, change: Partial<HouseRules>): void {
  tryChange({ key: `rules/${key}`, name, commands: [{ kind: 'setHouseRules', change }] })
}

function SiteBlock({ job }: { readonly job: Job }) {
  const { houseRules, header } = job
  return (
    <section className="block">
      <h3>The site</h3>
      <div className="field-grid">
        <EntryField
          label="Work starts on"
          kind="date"
          shown={header.startsOn}
          read={dateEntry}
          onCommit={(startsOn) =>
            tryChange({
              key: 'startsOn',
              name: `Start on ${dateWordsWithYear(startsOn, header.unitSystem)}`,
              commands: [{ kind: 'setHeader', change: { startsOn } }],
            })
          }
        />
        <EntryField
          label="Work may begin at"
          kind="time"
          width="short"
          shown={houseRules.siteHours.from}
          read={timeEntry}
          onCommit={(from) =>
            rule('hours', 'Change the site hours', { siteHours: { ...houseRules.siteHours, from } })
          }
        />
        <EntryField
          label="and must end by"
          kind="time"
          width="short"
          shown={houseRules.siteHours.to}
          read={timeEntry}
          onCommit={(to) =>
            rule('hours', 'Change the site hours', { siteHours: { ...houseRules.siteHours, to } })
          }
        />
        <EntryField
          label="Setting up each day"
          width="short"
          unit="min"
          shown={String(houseRules.setUpMinutes)}
          read={wholeNumber(0, 240)}
          onCommit={(setUpMinutes) => rule('setUp', 'Change the time for setting up', { setUpMinutes })}
        />
        <EntryField
          label="Clearing away each day"
          width="short"
          unit="min"
          shown={String(houseRules.cleanUpMinutes)}
          read={wholeNumber(0, 240)}
          onCommit={(cleanUpMinutes) =>
            rule('cleanUp', 'Change the time for clearing away', { cleanUpMinutes })
          }
        />
        <EntryField
          label="Rooms out of use at once, at most"
          width="short"
          shown={String(houseRules.maxRoomsOutOfUse)}
          read={wholeNumber(0, 200)}
          hint="a room is out of use from its first task until the last is dry; 0 is no limit"
          onCommit={(maxRoomsOutOfUse) =>
            rule('rooms', `At most ${maxRoomsOutOfUse} rooms out of use`, { maxRoomsOutOfUse })
          }
        />
      </div>
      <Choice
        label="Order inside a room"
        options={optionsOf(roomOrders, roomOrderWords, roomOrderNotes)}
        chosen={houseRules.roomOrder}
        onChoose={(roomOrder) => rule('order', 'Change the order inside rooms', { roomOrder })}
      />
    </section>
  )
}

function HolidaysBlock({ job }: { readonly job: Job }) {
  const { houseRules, header } = job
  const usual = holidaysAhead(header.startsOn)
  const missing = usual.filter(({ date }) => !houseRules.holidays.includes(date))
  const add = (dates: readonly string[]) =>
    rule('holidays', 'Change the holidays', { holidays: withDaysOff(houseRules.holidays, dates) })
  return (
    <section className="block">
      <h3>Holidays on site</h3>
      <ul className="dates">
        {houseRules.holidays.map((date) => (
          <li key={date}>
            {dateWordsWithYear(date, header.unitSystem)}{' '}
            <span className="quiet">{usual.find((day) => day.date === date)?.name}</span>
            <Button
              className="plain-button remove"
              aria-label={`Remove the holiday of ${date}`}
              onPress={() =>
                rule('holidays', 'Change the holidays', {
                  holidays: houseRules.holidays.filter((each) => each !== date),
                })
              }
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <EntryField
        label="Add a day without work"
        kind="date"
        shown={header.startsOn}
        read={dateEntry}
        onCommit={(date) => add([date])}
      />
      {missing.length === 0 ? null : (
        <Button className="plain-button" onPress={() => add(missing.map(({ date }) => date))}>
          Add the six usual U.S. holidays, this year and next
        </Button>
      )}
    </section>
  )
}

function RoomsBlock({ job }: { readonly job: Job }) {
  return (
    <section className="block">
      <h3>Rooms</h3>
      <table className="pick-table">
        <thead>
          <tr>
            <th scope="col">Room</th>
            <th scope="col">Promised back by</th>
            <th scope="col">Way out of other rooms</th>
            <th scope="col">Order inside</th>
          </tr>
        </thead>
        <tbody>
          {records(job.rooms).map((room) => (
            <RoomRules key={room.id} room={room} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

function RoomRules({ room }: { readonly room: Room }) {
  const change = (name: string, changes: Partial<Omit<Room, 'id' | 'corners'>>) =>
    tryChange({
      key: `room/${room.id}/${Object.keys(changes).join()}`,
      name,
      commands: [{ kind: 'setRoom', roomId: room.id, change: changes }],
    })
  return (
    <tr>
      <td>{room.name}</td>
      <td>
        <EntryField
          label={`${room.name}: promised back by`}
          isBare
          kind="datetime-local"
          shown={room.backBy ?? ''}
          read={orNothing<string>(momentEntry)}
          onCommit={(backBy) =>
            change(backBy === null ? `No promise for ${room.name}` : `Promise ${room.name} back`, { backBy })
          }
        />
      </td>
      <td>
        <Tick
          isOn={room.wayOut}
          onChange={(wayOut) => change(`${room.name}: ${wayOut ? 'the' : 'not the'} way out`, { wayOut })}
        >
          kept passable, painted last
        </Tick>
      </td>
      <td>
        <Choice
          label={`${room.name}: order inside`}
          isBare
          options={[
            { id: 'houseRule', label: 'As the house rule' },
            ...optionsOf(roomOrders, roomOrderWords, roomOrderNotes),
          ]}
          chosen={room.order}
          onChoose={(order) => change(`Change the order inside ${room.name}`, { order })}
        />
      </td>
    </tr>
  )
}
