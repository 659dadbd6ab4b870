import { largestGap } from '../geometry/band.ts'
import { present } from '../lists/lists.ts'
import type { TrimRun } from '../project/sketch-records.ts'
import { trimNoun, wallName } from '../project/sketch-words.ts'
import { rectangleArea } from '../units/area.ts'
import { type Length, lengthFromUnits, sumLengths } from '../units/length.ts'
import { narrowWork } from './girth-policies.ts'
import type { RoomSurvey } from './room-survey.ts'
import { areaLine, faceOf, lengthLine, type SurfaceDraft } from './surface-draft.ts'
import type { DerivationLine } from './takeoff-types.ts'
import type { BandView, WallView } from './wall-view.ts'

/**
 * Every trim run of a room: its length, stopped by what it meets, times its girth. Lengths are taken along the finished wall from
 * inner corner to inner corner, a crown's too, and along the slope where the floor or the ceiling slopes.
 */
export function trimSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  return survey.parts.trimRuns.map((run) => trimSurface(survey, run))
}

interface OnWall {
  readonly view: WallView
  readonly band: BandView
}

function trimSurface(survey: RoomSurvey, run: TrimRun): SurfaceDraft {
  const { room } = survey.parts
  const pieces = survey.views.flatMap((view) =>
    view.bands.flatMap((band): readonly OnWall[] => (band.run === run ? [{ view, band }] : [])),
  )
  const lengths = pieces.map(({ band }) => lengthFromUnits(band.length))
  const length = sumLengths(lengths)
  const grossArea = rectangleArea(length, run.girth)
  const policy = narrowWork(survey.rules.girthPolicy, run.girth, length)
  return {
    face: faceOf({ kind: 'trim', roomId: room.id, trimRunId: run.id }, room.id, 'trim', survey.rules.markOf),
    grossArea,
    policyArea: policy.area,
    length,
    edges: pieces.flatMap(({ band }) => survey.edges.bands.get(band) ?? []),
    reach: Math.max(0, ...pieces.map(reachOf)),
    derivation: () => [
      ...pieces.map((piece, index) => wallLine(survey, piece, present(lengths[index]))),
      areaLine(
        'gross',
        `${trimNoun(run)} ${survey.words.length(length)} x girth ${survey.words.small(run.girth)}`,
        grossArea,
        run.id,
      ),
    ],
  }
}

function reachOf({ view, band }: OnWall): number {
  return band.length === 0 ? 0 : largestGap(view.floor, band.upper, 0, view.wall.length)
}

function wallLine(survey: RoomSurvey, { view, band }: OnWall, length: Length): DerivationLine {
  const whole = lengthFromUnits(view.wall.length)
  const less = whole - length
  const changed =
    less > 0
      ? `, less ${survey.words.length(less)} where it stops`
      : less < 0
        ? `, ${survey.words.length(length)} along the slope`
        : ''
  const text = `${wallName(view.wall)} ${survey.words.length(whole)}${changed}`
  return lengthLine(text, lengthFromUnits(band.length), view.wall.id)
}
