import { Fragment } from 'react'
import type { Picture } from './picture.ts'
import { type HalfDayPlacing, letterWidth, personHeight, type WholeJobProps } from './whole-job-sizes.ts'

/** Where everybody is; the name of the room where it fits, else as many letters as do. */
export function PeopleRows(
  props: WholeJobProps & HalfDayPlacing & { readonly people: Picture['people']; readonly top: number },
) {
  const { place, roomName } = props
  return props.people.map(({ crewMemberId, stays, elsewhere }, index) => {
    const top = props.top + index * personHeight
    return (
      <g key={crewMemberId}>
        <line x1={0} x2="100%" y1={top + personHeight} y2={top + personHeight} className="whole-row" />
        {elsewhere.map(({ from, to }) => {
          const width = place(to) - place(from)
          return (
            <g key={`elsewhere ${from}`}>
              <title>{`${props.personName(crewMemberId)}: on another job`}</title>
              <rect
                x={place(from)}
                y={top + 4}
                width={width}
                height={personHeight - 8}
                className="plan-elsewhere"
              />
              {width < 14 * letterWidth ? null : (
                <text x={place(from) + 3} y={top + 16} className="plan-elsewhere-name">
                  on another job
                </text>
              )}
            </g>
          )
        })}
        {stays.map((stay) => {
          const width = place(stay.to) - place(stay.from)
          const letters = Math.floor((width - 2) / letterWidth)
          const name = roomName(stay.roomSetId)
          return (
            <Fragment key={stay.from}>
              <rect
                x={place(stay.from)}
                y={top + 3}
                width={width}
                height={personHeight - 6}
                className="whole-stay"
              >
                <title>{`${props.personName(crewMemberId)}: ${name}`}</title>
              </rect>
              {letters < 2 ? null : (
                <text x={place(stay.from) + 2} y={top + 16} className="whole-stay-name">
                  {name.slice(0, letters)}
                </text>
              )}
            </Fragment>
          )
        })}
      </g>
    )
  })
}
