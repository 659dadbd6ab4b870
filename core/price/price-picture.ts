import { groupedBy } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import { surfaceClassWords } from '../specification/trade-words.ts'
import type { Specification } from '../specification/types.ts'
import { type WorkKind, workKindOf, workKinds, workKindWords } from '../specification/work-kinds.ts'
import { type Cents, formatCents, roundToCents, sumCents } from '../units/money.ts'
import type { Estimate, EstimateLine } from './estimate-types.ts'
import { shareCents } from './price-shares.ts'
import { materialCentsByRoom } from './room-prices.ts'

/** What a price is put together by. */
export const priceGroupings = ['room', 'work'] as const
export type PriceGrouping = (typeof priceGroupings)[number]

export const priceGroupingWords: Readonly<Record<PriceGrouping, string>> = {
  room: 'Room',
  work: 'Kind of work',
}

interface PricePart {
  readonly key: string
  readonly label: string
  readonly cents: Cents
  /** How it came about. */
  readonly derivation: string
}

/** A bar of the picture of the price; its parts sum to it, and all bars to the price with tax. */
export interface PriceBar extends PricePart {
  readonly parts: readonly PricePart[]
}

/** The price with tax as bars, each with the lines it opens into. Whole cents, and the sum is `estimate.totals.total`. */
export function priceBars(
  job: Job,
  specification: Specification,
  estimate: Estimate,
  grouping: PriceGrouping,
): readonly PriceBar[] {
  const bars =
    grouping === 'room' ? roomBars(specification, estimate) : workBars(job, specification, estimate)
  return bars.filter(({ cents, parts }) => cents !== 0 || parts.length > 0)
}

/** A bar for each room with its share of everything, and one for tax. A price without rooms is one bar by kinds of lines. */
function roomBars(specification: Specification, estimate: Estimate): readonly PriceBar[] {
  const { rooms, lines, totals } = estimate
  if (rooms.length === 0) return lineBars(lines)
  const material = materialCentsByRoom(specification, estimate.materials)
  const materialShares = shareCents(
    totals.materials,
    rooms.map(({ roomId }) => material.get(roomId) ?? 0),
  )
  const labourByRoom = groupedBy(
    lines.filter(({ kind, roomId }) => kind === 'labour' && roomId !== null),
    ({ roomId }) => roomId,
  )
  const ofRooms = rooms.map(({ roomId, name, cents }, index): PriceBar => {
    const own = (labourByRoom.get(roomId) ?? []).map(labourPart)
    const paint = materialPart(roomId, materialShares[index] ?? roundToCents(0))
    const rest = roundToCents(cents - sumCents([...own, paint].map((part) => part.cents)))
    return {
      key: roomId,
      label: name,
      cents,
      derivation:
        'the price before tax, shared over the rooms by their own labor and material, to the whole cent',
      parts: [...own, paint, restPart(roomId, rest)].filter((part) => part.cents !== 0),
    }
  })
  return [...ofRooms, ...lineBars(lines.filter(isTax))]
}

function labourPart({ key, surfaceClass, cents, derivation }: EstimateLine): PricePart {
  const on = surfaceClass === null ? 'The room as a whole' : surfaceClassWords[surfaceClass]
  return {
    key,
    label: `${on}, labor${key.endsWith(':unplanned') ? ', not in the plan yet' : ''}`,
    cents,
    derivation,
  }
}

function materialPart(roomId: string, cents: Cents): PricePart {
  return {
    key: `material:${roomId}`,
    label: 'Paint and other material',
    cents,
    derivation: 'of each can as much as the room takes of what is in it, spare included',
  }
}

function restPart(roomId: string, cents: Cents): PricePart {
  return {
    key: `rest:${roomId}`,
    label: 'Share of the whole job',
    cents,
    derivation:
      'setting up and moving, work for the house as a whole, sundries, overhead, contingency and profit, as far as they fall on this room',
  }
}

function isTax({ kind }: EstimateLine): boolean {
  return kind === 'materialsTax' || kind === 'labourTax'
}

const groupOfLine: Readonly<Record<EstimateLine['kind'], string>> = {
  labour: 'Around the work',
  material: 'Materials',
  sundry: 'Sundries',
  overhead: 'Overhead',
  contingency: 'Contingency',
  profit: 'Profit',
  materialsTax: 'Tax',
  labourTax: 'Tax',
}

/** Lines that belong to no room, a bar for each kind of line. */
function lineBars(lines: readonly EstimateLine[]): readonly PriceBar[] {
  return [...groupedBy(lines, ({ kind }) => groupOfLine[kind])].map(([label, own]) => ({
    key: label,
    label,
    cents: sumCents(own.map(({ cents }) => cents)),
    derivation: own.length === 1 ? (own[0]?.derivation ?? '') : `the sum of ${own.length} lines`,
    parts: own.map(({ key, label: name, cents, derivation }) => ({ key, label: name, cents, derivation })),
  }))
}

/** A bar for each kind of work with its labor by room, one for what is around it, and one for each kind of other line. */
function workBars(job: Job, specification: Specification, estimate: Estimate): readonly PriceBar[] {
  const weights = minutesByLine(specification, estimate)
  const cents = new Map<WorkKind, Map<string, Cents>>()
  const besides: EstimateLine[] = []
  for (const line of estimate.lines) {
    const minutes = line.kind === 'labour' && line.roomId !== null ? weights.get(lineKey(line)) : undefined
    if (minutes === undefined) {
      besides.push(line)
      continue
    }
    const shares = shareCents(line.cents, [...minutes.values()])
    for (const [index, kind] of [...minutes.keys()].entries()) {
      const rooms = cents.get(kind) ?? new Map<string, Cents>()
      const roomId = line.roomId ?? ''
      rooms.set(roomId, roundToCents((rooms.get(roomId) ?? 0) + (shares[index] ?? 0)))
      cents.set(kind, rooms)
    }
  }
  const ofWork = workKinds.flatMap((kind) => {
    const rooms = cents.get(kind)
    return rooms === undefined ? [] : [workBar(job, kind, rooms)]
  })
  return [...ofWork, ...lineBars(besides)]
}

function workBar(job: Job, kind: WorkKind, rooms: ReadonlyMap<string, Cents>): PriceBar {
  return {
    key: kind,
    label: workKindWords[kind],
    cents: sumCents([...rooms.values()]),
    derivation: `labor with burden in ${rooms.size === 1 ? 'one room' : `${rooms.size} rooms`}`,
    parts: [...rooms].map(([roomId, cents]) => ({
      key: `${kind}:${roomId}`,
      label: job.rooms[roomId]?.name ?? roomId,
      cents,
      derivation: `${formatCents(cents)} of the labor on this room’s surfaces, by the minutes of each step`,
    })),
  }
}

/** Minutes by kind of work of the steps behind each line of labor. */
function minutesByLine(
  specification: Specification,
  { labour: { steps } }: Estimate,
): ReadonlyMap<string, ReadonlyMap<WorkKind, number>> {
  const byKey = new Map(specification.steps.map((step) => [step.key, step]))
  const found = new Map<string, Map<WorkKind, number>>()
  for (const { stepKey, minutes } of steps) {
    const step = byKey.get(stepKey)
    if (step === undefined) continue
    const key = lineKey(step)
    const kinds = found.get(key) ?? new Map<WorkKind, number>()
    const kind = workKindOf(step.operation)
    kinds.set(kind, (kinds.get(kind) ?? 0) + minutes)
    found.set(key, kinds)
  }
  return found
}

function lineKey({ roomId, surfaceClass }: Pick<EstimateLine, 'roomId' | 'surfaceClass'>): string {
  return `${roomId} ${surfaceClass ?? 'room'}`
}
