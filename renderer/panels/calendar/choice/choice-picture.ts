import { type PlanAim, planAims } from '../../../../core/project/vocabulary.ts'
import type { ComparedPlan } from '../../../../core/schedule/choice/choose.ts'
import { dateOfDay, dayOfDate } from '../../../../core/time/local-date.ts'

/** One dot: a plan, with all aims that it is best for. `onScreen` is the plan drawn in the Calendar. */
export interface Dot {
  readonly aims: readonly PlanAim[]
  readonly onScreen: boolean
  readonly x: number
  readonly y: number
  /** Where its words stand, so that none lie on one another. */
  readonly label: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'end' }
}

interface ChoicePicture {
  readonly dots: readonly Dot[]
  /** Last days across, room-days up, each with its place in pixels. */
  readonly days: readonly { readonly date: string; readonly x: number }[]
  readonly roomDays: readonly { readonly count: number; readonly y: number }[]
}

interface Frame {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Words need so many pixels above one another, and a dot and its words so many beside one another. */
const lineHeight = 15
const labelWidth = 128

/** Plans as dots: last day across, room-days up. Plans alike in both are one dot. */
export function choicePicture(
  plans: ReadonlyMap<PlanAim, ComparedPlan>,
  onScreen: ComparedPlan | null,
  frame: Frame,
): ChoicePicture {
  const groups = groupsOf(plans, onScreen)
  const across = scaleOf(
    groups.map(({ plan }) => dayOfDate(plan.finishesOn)),
    frame.left,
    frame.width - frame.right,
  )
  const up = scaleOf(
    groups.map(({ plan }) => plan.roomDays),
    frame.height - frame.bottom,
    frame.top,
  )
  const places = groups.map(({ aims, plan, isShown }) => {
    const [x, y] = [across.place(dayOfDate(plan.finishesOn)), up.place(plan.roomDays)]
    return { aims, onScreen: isShown, x, y }
  })
  return {
    dots: withLabels(places, frame),
    days: across.marks.map((day) => ({ date: dateOfDay(day), x: across.place(day) })),
    roomDays: up.marks.map((count) => ({ count, y: up.place(count) })),
  }
}

interface Group {
  readonly aims: readonly PlanAim[]
  readonly plan: ComparedPlan
  readonly isShown: boolean
}

function groupsOf(
  plans: ReadonlyMap<PlanAim, ComparedPlan>,
  onScreen: ComparedPlan | null,
): readonly Group[] {
  const groups = new Map<string, Group>()
  for (const aim of planAims) {
    const plan = plans.get(aim)
    if (plan === undefined) continue
    const known = groups.get(keyOf(plan))
    const isShown = onScreen !== null && keyOf(plan) === keyOf(onScreen)
    groups.set(keyOf(plan), { aims: [...(known?.aims ?? []), aim], plan, isShown })
  }
  const found = [...groups.values()]
  const isRinged = onScreen === null || found.some(({ isShown }) => isShown)
  if (isRinged) return found
  const there = found.find(({ plan }) => isInPlace(plan, onScreen))
  return there === undefined
    ? [...found, { aims: [], plan: onScreen, isShown: true }]
    : found.map((each) => (each === there ? { ...each, isShown: true } : each))
}

/** Plans that a choice cannot tell apart. */
function keyOf({ finishesOn, roomDays, cost }: ComparedPlan): string {
  return `${finishesOn} ${roomDays} ${cost.pay}`
}

function isInPlace(one: ComparedPlan, other: ComparedPlan): boolean {
  return one.finishesOn === other.finishesOn && one.roomDays === other.roomDays
}

interface Scale {
  readonly place: (value: number) => number
  /** Ends and middle, whole numbers. */
  readonly marks: readonly number[]
}

/** From the least to the greatest value, with a little room at either end. */
function scaleOf(values: readonly number[], from: number, to: number): Scale {
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const room = Math.max(2, (most - least) * 0.1)
  const [low, high] = [least - room, most + room]
  const place = (value: number): number => from + ((value - low) / (high - low)) * (to - from)
  return { place, marks: [...new Set([least, Math.round((least + most) / 2), most])] }
}

type Placed = Omit<Dot, 'label'>

/** Words go beside their dot, on the side where there is room, and down as far as others are in the way. */
function withLabels(places: readonly Placed[], frame: Frame): readonly Dot[] {
  const dots: Dot[] = []
  for (const each of places.toSorted((one, other) => one.y - other.y)) {
    const anchor = each.x + labelWidth > frame.width ? ('end' as const) : ('start' as const)
    const x = anchor === 'start' ? each.x + 10 : each.x - 10
    const above = dots.filter(({ label }) => overlap(label, { x, anchor }))
    const y = Math.max(each.y, ...above.map(({ label }) => label.y + lineHeight))
    dots.push({ ...each, label: { x, y, anchor } })
  }
  return dots
}

function overlap(
  one: Pick<Dot['label'], 'x' | 'anchor'>,
  other: Pick<Dot['label'], 'x' | 'anchor'>,
): boolean {
  const spanOf = ({ x, anchor }: Pick<Dot['label'], 'x' | 'anchor'>): readonly [number, number] =>
    anchor === 'start' ? [x, x + labelWidth] : [x - labelWidth, x]
  const [[from, to], [begin, end]] = [spanOf(one), spanOf(other)]
  return from < end && begin < to
}
