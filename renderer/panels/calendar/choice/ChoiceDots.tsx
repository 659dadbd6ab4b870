import { Button } from 'react-aria-components'
import type { PlanAim } from '../../../../core/project/vocabulary.ts'
import { aimWords } from '../../../../core/schedule/choice/difference.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import type { LengthUnitSystem } from '../../../../core/units/length.ts'
import { formatCents } from '../../../../core/units/money.ts'
import type { FoundPlan } from '../../../state/planner-messages.ts'
import { choicePicture, type Dot } from './choice-picture.ts'

const frame = { width: 340, height: 176, left: 40, right: 16, top: 14, bottom: 34 } as const

/** Plans as dots: last day across, room-days up, pay beside. Pressing one chooses it; the table says the same in words. */
export function ChoiceDots(props: {
  readonly plans: ReadonlyMap<PlanAim, FoundPlan>
  readonly present: FoundPlan | null
  readonly system: LengthUnitSystem
  readonly onChoose: (aim: PlanAim) => void
}) {
  const { plans, present, system } = props
  const compared = new Map([...plans].map(([aim, { workPlan }]) => [aim, workPlan]))
  const picture = choicePicture(compared, present?.workPlan ?? null, frame)
  const payOf = ({ aims: [aim] }: Dot): number =>
    (aim === undefined ? present : plans.get(aim))?.workPlan.cost.pay ?? 0
  const floor = frame.height - frame.bottom
  return (
    <div className="plan-choice-dots" style={{ width: frame.width, height: frame.height }}>
      <svg width={frame.width} height={frame.height} aria-hidden="true">
        {picture.roomDays.map(({ count, y }) => (
          <g key={count}>
            <line x1={frame.left} x2={frame.width - 4} y1={y} y2={y} className="plan-choice-line" />
            <text x={frame.left - 6} y={y + 4} textAnchor="end">
              {count}
            </text>
          </g>
        ))}
        {picture.days.map(({ date, x }) => (
          <g key={date}>
            <line x1={x} x2={x} y1={frame.top - 8} y2={floor} className="plan-choice-line" />
            <text x={x} y={floor + 14} textAnchor="middle">
              {dateWords(date, system).slice(4)}
            </text>
          </g>
        ))}
        <text x={frame.width - 4} y={floor + 29} textAnchor="end" className="plan-choice-axis">
          last day →
        </text>
        <text x={2} y={floor + 29} className="plan-choice-axis">
          ↑ room-days
        </text>
        {picture.dots.map((dot) => (
          <g key={`${dot.x} ${dot.y} ${dot.aims.join()}`}>
            <circle cx={dot.x} cy={dot.y} r={5} className="plan-choice-dot" />
            {dot.onScreen ? <circle cx={dot.x} cy={dot.y} r={8.5} className="plan-choice-ring" /> : null}
            <text
              x={dot.label.x + (dot.label.anchor === 'start' ? 3 : -3)}
              y={dot.label.y + 4}
              textAnchor={dot.label.anchor}
              className="plan-choice-label"
            >
              <tspan className="plan-choice-name">{namesOf(dot)}</tspan> {shortDollars(payOf(dot))}
            </text>
          </g>
        ))}
      </svg>
      {picture.dots.map((dot) => {
        const [aim] = dot.aims
        return aim === undefined ? null : (
          <Button
            key={aim}
            className="plan-choice-press"
            excludeFromTabOrder
            aria-label={`${namesOf(dot)}: choose this dot`}
            style={{ left: dot.x - 12, top: dot.y - 12 }}
            onPress={() => props.onChoose(aim)}
          />
        )
      })}
    </div>
  )
}

function namesOf({ aims }: Dot): string {
  if (aims.length === 0) return 'On screen'
  return aims.map((aim, index) => (index === 0 ? aimWords[aim] : aimWords[aim].toLowerCase())).join(', ')
}

function shortDollars(cents: number): string {
  return formatCents(Math.round(cents / 100) * 100).slice(0, -3)
}
