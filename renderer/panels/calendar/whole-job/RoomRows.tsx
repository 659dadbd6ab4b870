import { type KeyboardEvent, useState } from 'react'
import { dateWords } from '../../../../core/time/date-words.ts'
import { dateOfDay } from '../../../../core/time/local-date.ts'
import { phaseWords } from '../../../../core/work-order/phases.ts'
import type { HalfDays, PhaseBlock, RoomRow } from './picture.ts'
import {
  type HalfDayPlacing,
  headHeight,
  letterWidth,
  rowHeight,
  type WholeJobProps,
} from './whole-job-sizes.ts'

/** One stop for the Tab key; arrow keys walk between blocks and rooms. */
export function RoomRows(props: WholeJobProps & HalfDayPlacing & { readonly drawn: number }) {
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
  return picture.rooms
    .slice(0, props.drawn)
    .map((row, index) => (
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

interface RoomBlocksProps extends WholeJobProps, HalfDayPlacing {
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
  /** Many stretches as one path. */
  const boxes = (stretches: readonly HalfDays[], y: number, height: number) =>
    stretches
      .map(box)
      .map(({ x, width }) => `M${x} ${y}h${width}v${height}h${-width}z`)
      .join('')
  return (
    <g>
      <line x1={0} x2="100%" y1={top + rowHeight} y2={top + rowHeight} className="whole-row" />
      <path d={boxes(row.outOfUse, top + rowHeight - 5, 3)} className="plan-out-of-use" />
      <path d={boxes(row.drying, top + 5, rowHeight - 13)} className="plan-drying" />
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
