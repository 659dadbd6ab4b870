import type { BuiltItem } from '../project/built-records.ts'
import { radiatorSectionSquareFeet } from '../project/radiator-surface.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import { type Area, areaFromUnits, rectangleArea, squareFeet, sumAreas, zeroArea } from '../units/area.ts'
import { inches, lengthFromUnits } from '../units/length.ts'
import {
  balustradeArea,
  cupboardCoefficient,
  cupboardSource,
  equivalentArea,
  stepsArea,
} from './equivalents.ts'
import type { FigureWords } from './figure-words.ts'
import type { Edge } from './finish-marks.ts'
import type { RoomSurvey } from './room-survey.ts'
import { areaLine, faceOf, type SurfaceDraft } from './surface-draft.ts'
import type { DerivationLine } from './takeoff-types.ts'

/** Stairs, radiators, cabinets, shelves and mantels of a room, one surface each. */
export function builtSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  const { room, builtItems } = survey.parts
  return builtItems.map((item) => {
    const surface = { kind: 'built', roomId: room.id, builtItemId: item.id } as const
    const face = faceOf(surface, room.id, classOf(item), survey.rules.markOf)
    return { face, ...measureBuilt(item, survey.words) }
  })
}

function classOf(item: BuiltItem): SurfaceClass {
  if (item.kind === 'stair') return 'stairs'
  return item.kind === 'radiator' ? 'radiators' : 'builtWork'
}

type BuiltDraft = Pick<
  SurfaceDraft,
  'grossArea' | 'equivalentArea' | 'length' | 'count' | 'edges' | 'reach' | 'derivation'
>
type Of<Kind extends BuiltItem['kind']> = Extract<BuiltItem, { readonly kind: Kind }>

function measureBuilt(item: BuiltItem, words: FigureWords): BuiltDraft {
  switch (item.kind) {
    case 'stair':
      return stair(item, words)
    case 'radiator':
      return radiator(item)
    case 'cabinet':
      return cabinet(item, words)
    case 'shelf':
      return shelf(item, words)
    case 'mantel':
      return mantel(item, words)
  }
}

/** One line of built work: its area, or nothing where there is none. */
function pieces(count: number, what: string, one: number, other: number, words: FigureWords): DerivationLine {
  const text = `${count} ${what} ${words.length(one)} x ${words.small(other)}`
  return areaLine('gross', text, areaFromUnits(count * rectangleArea(one, other)), null)
}

function present(lines: readonly DerivationLine[]): readonly DerivationLine[] {
  return lines.filter((line) => (line.area ?? 0) > 0)
}

function total(lines: readonly DerivationLine[]): Area {
  return sumAreas(lines.map((line) => line.area ?? zeroArea))
}

/** Steps by the line over treads and risers; the balustrade by its own rule for hours and by its members for paint. */
function stair(item: Of<'stair'>, words: FigureWords): BuiltDraft {
  const treads = item.paintTreads ? item.treads : 0
  const risers = item.paintRisers ? item.risers : 0
  const line = lengthFromUnits(treads * item.treadDepth + risers * item.riserHeight)
  const solid = present([
    areaLine(
      'gross',
      `${treads} treads and ${risers} risers, line over them ${words.length(line)} x ${words.length(item.stepLength)}`,
      stepsArea(line, item.stepLength),
      item.id,
    ),
    pieces(item.stringers, 'stringers', item.stringerLength, item.stringerGirth, words),
    pieces(item.newels, 'newels', item.newelHeight, item.newelGirth, words),
  ])
  const balustrade = present([
    pieces(item.balusters, 'balusters', item.balusterHeight, item.balusterGirth, words),
    pieces(item.handrailLength > 0 ? 1 : 0, 'handrail', item.handrailLength, item.handrailGirth, words),
  ])
  const rule = item.balusters > 0
  const byRule = rule
    ? balustradeArea(item.handrailLength, item.balusterHeight, item.handrailGirth)
    : total(balustrade)
  const note = areaLine(
    'note',
    'equivalent: balustrade as handrail length x (2 x baluster height + rail girth) (18th-19th c. mensuration texts)',
    byRule,
    item.id,
  )
  return {
    grossArea: total([...solid, ...balustrade]),
    equivalentArea: areaFromUnits(total(solid) + byRule),
    length: item.handrailLength,
    count: 1,
    edges: stepEdges(item, treads, risers),
    reach: Math.max(item.newelHeight, item.balusterHeight),
    derivation: () => [...solid, ...balustrade, ...(rule ? [note] : [])],
  }
}

/** Painted risers between bare treads, or the other way round, have an unpainted edge above and below. */
function stepEdges(item: Of<'stair'>, treads: number, risers: number): readonly Edge[] {
  const alone = treads === 0 ? risers : risers === 0 ? treads : 0
  return alone === 0
    ? []
    : [{ neighbour: null, length: 2 * alone * item.stepLength, along: 'steps left bare' }]
}

/** The whole surface, wet side left out, as published per section; what shows is less, but no source says how much. */
function radiator(item: Of<'radiator'>): BuiltDraft {
  const each = squareFeet(radiatorSectionSquareFeet(item) ?? 0)
  const grossArea = areaFromUnits(each * item.sections)
  const text = `${item.sections} sections of ${item.columns} ${item.pattern}s, ${item.heightInches} in high (published heating surface, boiler maker's guide)`
  return {
    grossArea,
    count: 1,
    edges: [],
    reach: inches(item.heightInches),
    derivation: () => [areaLine('gross', text, grossArea, item.id)],
  }
}

function cupboard(
  lines: readonly DerivationLine[],
  id: string,
): Pick<BuiltDraft, 'grossArea' | 'equivalentArea' | 'derivation'> {
  const grossArea = total(lines)
  const equivalent = equivalentArea(grossArea, cupboardCoefficient)
  const note = areaLine('note', `equivalent: x ${cupboardCoefficient} (${cupboardSource})`, equivalent, id)
  return { grossArea, equivalentArea: equivalent, derivation: () => [...lines, note] }
}

/** Front and both ends; inside also the back, the insides of ends and front, top and bottom. */
function cabinet(item: Of<'cabinet'>, words: FigureWords): BuiltDraft {
  const { width, height, depth } = item
  const lines = [
    pieces(1, 'front', width, height, words),
    pieces(2, 'ends', height, depth, words),
    ...(item.paintInside
      ? [
          pieces(2, 'insides of front and back', width, height, words),
          pieces(2, 'insides of ends', height, depth, words),
          pieces(2, 'top and bottom inside', width, depth, words),
        ]
      : []),
  ]
  return {
    ...cupboard(lines, item.id),
    count: Math.max(1, item.doors + item.drawers),
    edges: [],
    reach: height,
  }
}

/** Both faces, the front edge and both ends. */
function shelf(item: Of<'shelf'>, words: FigureWords): BuiltDraft {
  const { length, depth, thickness, count } = item
  const lines = present([
    pieces(2 * count, 'faces', length, depth, words),
    pieces(count, 'front edges', length, thickness, words),
    pieces(2 * count, 'ends', depth, thickness, words),
  ])
  return { ...cupboard(lines, item.id), length: lengthFromUnits(length * count), count, edges: [], reach: 0 }
}

/** Two legs under a frieze as wide as the mantel, and the shelf over it on both faces; returns are not known. */
function mantel(item: Of<'mantel'>, words: FigureWords): BuiltDraft {
  const legHeight = lengthFromUnits(Math.max(0, item.height - item.friezeHeight))
  const lines = present([
    pieces(2, 'legs', legHeight, item.legWidth, words),
    pieces(1, 'frieze', item.width, item.friezeHeight, words),
    pieces(2, 'faces of the shelf', item.width, item.shelfDepth, words),
  ])
  return { grossArea: total(lines), count: 1, edges: [], reach: item.height, derivation: () => lines }
}
