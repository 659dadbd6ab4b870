import type { GirthPolicy, Job, OpeningPolicy } from '../project/job.ts'
import type { RoomParts } from '../project/room-parts.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { type FigureWords, figureWords } from './figure-words.ts'
import { type FinishMark, finishMarks, floorMark, type MarkOf } from './finish-marks.ts'
import { type RoomEdges, roomEdges } from './room-edges.ts'
import { type HoleView, viewWalls, type WallView } from './wall-view.ts'

/** What holds for the whole job while its rooms are measured. */
export interface TakeOffRules {
  readonly system: LengthUnitSystem
  readonly openingPolicy: OpeningPolicy
  readonly girthPolicy: GirthPolicy
  readonly markOf: MarkOf
  readonly floorMarkOf: (roomId: RoomParts['room']['id']) => FinishMark
}

/**
 * What of a job decides how its rooms are measured. A room needs to be measured again only when these or its own records
 * change.
 */
export function takeOffRules(job: Job): TakeOffRules {
  return {
    system: job.header.unitSystem,
    openingPolicy: job.houseRules.openingPolicy,
    girthPolicy: job.houseRules.girthPolicy,
    markOf: finishMarks(job.finishes),
    floorMarkOf: (roomId) => floorMark(job.finishes, roomId),
  }
}

/** One room looked at from all sides, before any surface is measured. */
export interface RoomSurvey {
  readonly parts: RoomParts
  readonly rules: TakeOffRules
  readonly words: FigureWords
  readonly views: readonly WallView[]
  readonly edges: RoomEdges
  readonly floorMark: FinishMark
}

/** An opening as one room sees it, on its wall. */
export interface SeenOpening {
  readonly survey: RoomSurvey
  readonly view: WallView
  readonly hole: HoleView
}

/** Measures every surface of a room. */
export function surveyRoom(parts: RoomParts, rules: TakeOffRules): RoomSurvey {
  const { room } = parts
  const { markOf } = rules
  const views = viewWalls(parts, markOf)
  const floorMark = rules.floorMarkOf(room.id)
  const runMarks = new Map(
    parts.trimRuns.map((run) => [
      run.id,
      markOf({ kind: 'trim', roomId: room.id, trimRunId: run.id }, room.id, 'trim'),
    ]),
  )
  const edges = roomEdges(views, {
    ceiling:
      room.above === 'open' ? undefined : markOf({ kind: 'ceiling', roomId: room.id }, room.id, 'ceiling'),
    floor: floorMark,
    bandMark: (band) => runMarks.get(band.run.id) ?? null,
  })
  return { parts, rules, words: figureWords(rules.system), views, edges, floorMark }
}
