import { Button } from 'react-aria-components'
import { type CrewMember, type Week, type Weekday, weekdays } from '../../../core/project/shop-records.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { timeEntry } from '../parts/entries.ts'
import { weekdayWords } from '../parts/words.ts'

type Window = CrewMember['breaks'][number]

export const usualWindow: Window = { from: '08:00', to: '16:30' }

/** The hours of a week, day by day. */
export function WeekTable(props: { readonly person: CrewMember; readonly onChange: (week: Week) => void }) {
  const { week } = props.person
  const set = (day: Weekday, windows: readonly Window[]) => props.onChange({ ...week, [day]: windows })
  return (
    <section>
      <h3>Week</h3>
      <table className="week-table">
        <tbody>
          {weekdays.map((day) => (
            <tr key={day}>
              <th scope="row">{weekdayWords[day]}</th>
              <td>
                <WindowList
                  title={weekdayWords[day]}
                  isBare
                  windows={week[day]}
                  fresh={usualWindow}
                  onChange={(windows) => set(day, windows)}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** Times of day from - to, as many as there are; none means not there. */
export function WindowList(props: {
  readonly title: string
  readonly isBare?: boolean
  /** There is one, and it stays one. */
  readonly isSingle?: boolean
  readonly windows: readonly Window[]
  readonly fresh: Window
  readonly onChange: (windows: readonly Window[]) => void
}) {
  const { title, windows, onChange } = props
  const replace = (index: number, window: Window) =>
    onChange(windows.map((each, place) => (place === index ? window : each)))
  return (
    <section>
      {props.isBare ? null : <h3>{title}</h3>}
      <div className="windows">
        {windows.length === 0 && props.isBare ? <span className="quiet">off</span> : null}
        {windows.map((window, index) => (
          // Windows have no id; their place in the day is what they are.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <span key={index} className="window">
            <EntryField
              label={`${title}, from`}
              isBare
              kind="time"
              width="short"
              shown={window.from}
              read={timeEntry}
              onCommit={(from) => replace(index, { ...window, from })}
            />
            to
            <EntryField
              label={`${title}, to`}
              isBare
              kind="time"
              width="short"
              shown={window.to}
              read={timeEntry}
              onCommit={(to) => replace(index, { ...window, to })}
            />
            <Button
              className="plain-button remove"
              aria-label={`Remove ${window.from} to ${window.to}: ${title}`}
              onPress={() => onChange(windows.filter((_, place) => place !== index))}
            >
              Remove
            </Button>
          </span>
        ))}
        {props.isSingle ? null : (
          <Button
            className="plain-button"
            aria-label={`Add a time: ${title}`}
            onPress={() => onChange([...windows, props.fresh])}
          >
            Add a time
          </Button>
        )}
      </div>
    </section>
  )
}
