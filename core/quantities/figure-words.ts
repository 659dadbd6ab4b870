import { present } from '../lists/lists.ts'
import { formatArea } from '../units/area.ts'
import { formatLength, formatSmallLength, type LengthUnitSystem, lengthFromUnits } from '../units/length.ts'
import { type Edge, edgeLengths, type FinishMark } from './finish-marks.ts'
import type { DerivationLine } from './takeoff-types.ts'

/** Writes figures in one unit system. The same sizes come back all over a house, so that each is written once. */
export interface FigureWords {
  readonly length: (length: number) => string
  /** Of a small member: inches or millimetres. */
  readonly small: (length: number) => string
  readonly area: (area: number) => string
}

const words: Readonly<Record<LengthUnitSystem, FigureWords>> = {
  imperial: createWords('imperial'),
  metric: createWords('metric'),
}

/** The words in which figures tell how they came about. */
export function figureWords(system: LengthUnitSystem): FigureWords {
  return words[system]
}

function createWords(system: LengthUnitSystem): FigureWords {
  return {
    length: remember((length) => formatLength(length, system)),
    small: remember((length) => formatSmallLength(length, system)),
    area: (area) => formatArea(area, system),
  }
}

/** More sizes than a house has; then it starts over, so that a long day does not fill the memory. */
const mostRemembered = 10_000

function remember(write: (value: number) => string): (value: number) => string {
  const known = new Map<number, string>()
  return (value) => {
    const before = known.get(value)
    if (before !== undefined) return before
    if (known.size >= mostRemembered) known.clear()
    const text = write(value)
    known.set(value, text)
    return text
  }
}

/** How cutting-in and masking came about: `cut in: ceiling 12' 0" + baseboard 9' 4"`. */
export function edgeLines(
  own: FinishMark,
  edges: readonly Edge[],
  { length }: FigureWords,
): readonly DerivationLine[] {
  const { cuttingIn, masking } = edgeLengths(own, edges)
  const lines: DerivationLine[] = []
  const add = (start: string, total: number, holds: (edge: Edge) => boolean) => {
    if (total === 0) return
    const text = `${start} ${edgeText(edges.filter(holds), length)}`
    lines.push({
      kind: 'length',
      text,
      area: null,
      length: lengthFromUnits(total),
      sourceId: null,
    })
  }
  add('cut in along', cuttingIn, (edge) => edge.neighbour !== null && edge.neighbour !== own)
  add('mask along', masking, (edge) => edge.neighbour === null)
  return lines
}

function edgeText(edges: readonly Edge[], write: (length: number) => string): string {
  if (edges.length === 1) {
    const edge = present(edges[0])
    return `${edge.along} ${write(edge.length)}`
  }
  const sums = new Map<string, number>()
  for (const edge of edges) sums.set(edge.along, (sums.get(edge.along) ?? 0) + edge.length)
  return [...sums].map(([along, length]) => `${along} ${write(length)}`).join(' + ')
}
