import { dateOfDay, weekdayOf } from '../../../../core/time/local-date.ts'
import './whole-job.css'
import { type KeyboardEvent, type ReactNode, useState } from 'react'
import { dateWords } from '../../../../core/time/date-words.ts'
import type { LengthUnitSystem } from '../../../../core/units/length.ts'
import { type Phase, phases, phaseWords } from '../../../../core/work-order/phases.ts'
import { Patterns } from '../Patterns.tsx'
import { PhasePatterns, PhaseSign } from './PhaseLooks.tsx'
import { dayAt, type HalfDays, type PhaseBlock, type Picture, type RoomRow } from './picture.ts'

const nameWidth = 172
const rowHeight = 30
const personHeight = 24
const headHeight = 34
/** A word needs about so many pixels a letter in the small type of the drawing. */
const letterWidth = 6.2

interface WholeJobProps {
  readonly picture: Picture
  /** Width there is, names included, in pixels. */
  readonly width: number
  readonly system: LengthUnitSystem
  readonly roomName: (roomSetId: string) => string
  readonly personName: (id: string) => string
  readonly pickedKey: string | null
  /** First task of a block that is picked. */
  readonly onPick: (taskKey: string) => void
  readonly corner: ReactNode
}

/** The whole job at a glance: what goes on in every room set, phase by phase, and in which room everybody is, by half-days. */
export function WholeJob(props: WholeJobProps) {
  const { picture, width } = props
  const wide = Math.max(3, (width - nameWidth - 4) / (picture.days * 2))
  const place = (half: number) => half * wide
  const drawn = picture.days * 2 * wide
  const height = headHeight + picture.rooms.length * rowHeight + picture.people.length * personHeight
  return (
    <section className="whole-job" aria-label="The whole job">
      <Patterns />
      <PhasePatterns />
      <div className="whole-names" style={{ width: nameWidth }}>
        <div className="whole-corner" style={{ height: headHeight }}>
          {props.corner}
        </div>
        {picture.rooms.map((row) => (
          <div key={row.roomSetId} className="whole-name" style={{ height: rowHeight }}>
            <strong>{props.roomName(row.roomSetId)}</strong>
            <span>{row.lastDay === '' ? 'done' : `back ${backWords(row.lastDay, props.system)}`}</span>
          </div>
        ))}
        {picture.people.map(({ crewMemberId }) => (
          <div key={crewMemberId} className="whole-name whole-person" style={{ height: personHeight }}>
            <strong>{props.personName(crewMemberId)}</strong>
          </div>
        ))}
      </div>
      <svg width={drawn} height={height} className="whole-drawing">
        <title>Rooms and people by half-days</title>
        <Days picture={picture} place={place} height={height} system={props.system} />
        <Rows {...props} place={place} />
        <People {...props} place={place} top={headHeight + picture.rooms.length * rowHeight} />
      </svg>
    </section>
  )
}

/** A room is back on the day after its last day out of use. */
function backWords(lastDay: string, system: LengthUnitSystem): string {
  return dateWords(dateOfDay(dayAt(lastDay) + 1), system)
}

interface Placing {
  readonly place: (half: number) => number
}

function Days({
  picture,
  place,
  height,
  system,
}: Placing & { readonly picture: Picture; readonly height: number; readonly system: LengthUnitSystem }) {
  const days = Array.from({ length: picture.days }, (_, index) => picture.firstDay + index)
  const dayWidth = place(2)
  return (
    <g>
      {days.map((day, index) => {
        const weekday = weekdayOf(day)
        const isMonday = weekday === 1 || index === 0
        return (
          <g key={day}>
            {weekday === 0 || weekday === 6 ? (
              <rect
                x={place(2 * index)}
                y={headHeight}
                width={dayWidth}
                height={height - headHeight}
                className="whole-weekend"
              />
            ) : null}
            {isMonday ? (
              <>
                <line x1={place(2 * index)} x2={place(2 * index)} y1={0} y2={height} className="whole-week" />
                <text x={place(2 * index) + 3} y={14} className="whole-date">
                  {dateWords(dateOfDay(day), system).slice(4)}
                </text>
              </>
            ) : null}
            {dayWidth >= 12 ? (
              <text x={place(2 * index) + dayWidth / 2} y={28} className="whole-day">
                {'SMTWTFS'[weekday]}
              </text>
            ) : null}
          </g>
        )
      })}
    </g>
  )
}

/** One stop for the Tab key; arrow keys walk between blocks and rooms. */
function Rows(props: WholeJobProps & Placing) {
  const { picture } = props
  const [stop, setStop] = useState<readonly [number, number]>([0, 0])
  function walk(event: KeyboardEvent, row: number, block: number) {
    const step = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[event.key]
    if (step === undefined) return
    event.preventDefault()
    const nextRow = Math.min(picture.rooms.length - 1, Math.max(0, row + (step[0] ?? 0)))
    const most = (picture.rooms[nextRow]?.blocks.length ?? 1) - 1
    const next = [nextRow, Math.min(most, Math.max(0, block + (step[1] ?? 0)))] as const
    setStop(next)
    document.getElementById(blockId(...next))?.focus()
  }
  return picture.rooms.map((row, index) => (
    <RoomBlocks
      key={row.roomSetId}
      {...props}
      row={row}
      top={headHeight + index * rowHeight}
      idOf={(block) => blockId(index, block)}
      stopAt={stop[0] === index ? stop[1] : null}
      onKey={(event, block) => walk(event, index, block)}
      onFocus={(block) => setStop([index, block])}
    />
  ))
}

function blockId(row: number, block: number): string {
  return `whole-block-${row}-${block}`
}

interface RoomBlocksProps extends WholeJobProps, Placing {
  readonly row: RoomRow
  readonly top: number
  readonly idOf: (block: number) => string
  readonly stopAt: number | null
  readonly onKey: (event: KeyboardEvent, block: number) => void
  readonly onFocus: (block: number) => void
}

function RoomBlocks(props: RoomBlocksProps) {
  const { row, top, place } = props
  const box = ({ from, to }: HalfDays) => ({ x: place(from), width: Math.max(1, place(to) - place(from)) })
  return (
    <g>
      <line x1={0} x2="100%" y1={top + rowHeight} y2={top + rowHeight} className="whole-row" />
      {row.outOfUse.map((each) => (
        <rect key={each.from} {...box(each)} y={top + rowHeight - 5} height={3} className="plan-out-of-use" />
      ))}
      {row.drying.map((each) => (
        <rect
          key={`${each.from} ${each.to}`}
          {...box(each)}
          y={top + 5}
          height={rowHeight - 13}
          className="plan-drying"
        />
      ))}
      {row.givenBack.map((each) => (
        <GivenBack key={each.from} {...box(each)} top={top} />
      ))}
      {row.blocks.map((block, index) => (
        <Block
          key={block.from}
          {...box(block)}
          block={block}
          top={top}
          id={props.idOf(index)}
          isPicked={props.pickedKey !== null && block.taskKeys.includes(props.pickedKey)}
          words={blockWords(props, row, block)}
          isStop={props.stopAt === index}
          onPick={() => props.onPick(block.taskKeys[0] ?? '')}
          onKey={(event) => props.onKey(event, index)}
          onFocus={() => props.onFocus(index)}
        />
      ))}
    </g>
  )
}

function blockWords({ picture, system, roomName }: WholeJobProps, row: RoomRow, block: PhaseBlock): string {
  const day = (half: number) => dateWords(dateOfDay(picture.firstDay + Math.floor(half / 2)), system)
  const [from, to] = [day(block.from), day(Math.max(block.from, block.to - 0.01))]
  const count = block.taskKeys.length === 1 ? '' : `, ${block.taskKeys.length} passes`
  return `${roomName(row.roomSetId)}: ${phaseWords[block.phase]}, ${from === to ? from : `${from} to ${to}`}${count}`
}

function Block(props: {
  readonly x: number
  readonly width: number
  readonly top: number
  readonly block: PhaseBlock
  readonly id: string
  readonly isPicked: boolean
  readonly words: string
  readonly isStop: boolean
  readonly onPick: () => void
  readonly onKey: (event: KeyboardEvent) => void
  readonly onFocus: () => void
}) {
  const { x, width, top, block } = props
  const word = phaseWords[block.phase]
  const isNamed = width >= word.length * letterWidth + 4
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no buttons of its own
    <g
      id={props.id}
      role="button"
      tabIndex={props.isStop ? 0 : -1}
      aria-label={props.words}
      className={props.isPicked ? 'whole-block whole-picked' : 'whole-block'}
      onClick={props.onPick}
      onFocus={props.onFocus}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault()
          props.onPick()
        } else props.onKey(event)
      }}
    >
      <title>{props.words}</title>
      <rect
        x={x}
        y={top + 4}
        width={width}
        height={rowHeight - 11}
        className={`phase phase-${block.phase}`}
      />
      {isNamed ? (
        <text x={x + width / 2} y={top + 18} className="phase-name">
          {word}
        </text>
      ) : null}
    </g>
  )
}

function GivenBack(props: { readonly x: number; readonly width: number; readonly top: number }) {
  return props.width < 66 ? null : (
    <text x={props.x + props.width / 2} y={props.top + 19} className="whole-given-back">
      given back
    </text>
  )
}

/** Where everybody is; the name of the room where it fits, else as many letters as do. */
function People(props: WholeJobProps & Placing & { readonly top: number }) {
  const { place, roomName } = props
  return props.picture.people.map(({ crewMemberId, stays, elsewhere }, index) => {
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
            <g key={stay.from}>
              <title>{`${props.personName(crewMemberId)}: ${name}`}</title>
              <rect
                x={place(stay.from)}
                y={top + 3}
                width={width}
                height={personHeight - 6}
                className="whole-stay"
              />
              {letters < 2 ? null : (
                <text x={place(stay.from) + 2} y={top + 16} className="whole-stay-name">
                  {name.slice(0, letters)}
                </text>
              )}
            </g>
          )
        })}
      </g>
    )
  })
}

/** What the patterns mean. */
export function WholeJobLegend(props: {
  /** Somebody is on another job of the book. */
  readonly hasElsewhere: boolean
}) {
  return (
    <div className="plan-legend">
      {phases.map((phase: Phase) => (
        <PhaseSign key={phase} phase={phase} />
      ))}
      <span>
        <svg width="20" height="12" aria-hidden="true">
          <rect width="20" height="12" className="plan-drying" />
        </svg>
        drying
      </span>
      <span>
        <svg width="20" height="12" aria-hidden="true">
          <rect y="4" width="20" height="4" className="plan-out-of-use" />
        </svg>
        room out of use
      </span>
      {props.hasElsewhere ? (
        <span>
          <svg width="20" height="12" aria-hidden="true">
            <rect x="0.5" y="0.5" width="19" height="11" className="plan-elsewhere" />
          </svg>
          on another job
        </span>
      ) : null}
    </div>
  )
}
