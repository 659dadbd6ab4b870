import type { Point } from '../../../core/geometry/point.ts'
import type { Job } from '../../../core/project/job.ts'
import type { OpeningId, RoomId, StoreyId, WallId } from '../../../core/project/sketch-records.ts'
import type { OpeningKind } from '../../../core/project/vocabulary.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import type { SnapGuide } from '../../../core/sketch/snapping.ts'
import type { NewId } from '../../state/new-id.ts'
import type { Target } from '../hit.ts'

/** The tool that is chosen. Each ends every gesture at rest. */
export type ToolName = 'pick' | 'rectangle' | 'outline' | OpeningKind

/** Everything a tool may look at; lengths and points in plan units. */
export interface Surroundings {
  readonly job: Job
  readonly storeyId: StoreyId
  readonly selectedIds: readonly string[]
  /** How near the pointer must come to catch on something. */
  readonly tolerance: number
  readonly grid: number | null
  /** Thickness of walls between rooms, for new rooms next to others. */
  readonly partition: number
  readonly newId: NewId
}

export type Input =
  | { readonly kind: 'down'; readonly point: Point; readonly adds: boolean; readonly free: boolean }
  | { readonly kind: 'move'; readonly point: Point; readonly free: boolean }
  | { readonly kind: 'up'; readonly point: Point; readonly free: boolean }
  | { readonly kind: 'key'; readonly key: string }

/** What a tool is in the middle of. Nothing in it is recorded until the gesture ends. */
export type Gesture =
  | { readonly kind: 'resting' }
  | { readonly kind: 'hovering'; readonly guides: readonly SnapGuide[]; readonly point: Point }
  | {
      readonly kind: 'drawingRectangle'
      readonly from: Point
      readonly to: Point
      readonly typed: string
      readonly guides: readonly SnapGuide[]
    }
  | {
      readonly kind: 'drawingOutline'
      readonly corners: readonly Point[]
      readonly to: Point
      readonly typed: string
      readonly guides: readonly SnapGuide[]
    }
  | { readonly kind: 'placingOpening'; readonly command: SketchCommand | null; readonly point: Point }
  | { readonly kind: 'pressing'; readonly target: Target | null; readonly at: Point; readonly adds: boolean }
  | {
      readonly kind: 'movingCorner'
      readonly roomId: RoomId
      readonly wallId: WallId
      readonly to: Point
      readonly guides: readonly SnapGuide[]
    }
  | {
      readonly kind: 'movingWall'
      readonly roomId: RoomId
      readonly wallId: WallId
      readonly by: number
      readonly to: Point
    }
  | {
      readonly kind: 'slidingOpening'
      readonly openingId: OpeningId
      readonly grabbedAt: number
      readonly offset: number
      readonly to: Point
    }
  | {
      readonly kind: 'movingRooms'
      readonly roomIds: readonly RoomId[]
      readonly from: Point
      readonly to: Point
      readonly dx: number
      readonly dy: number
      readonly guides: readonly SnapGuide[]
    }
  | { readonly kind: 'sweeping'; readonly from: Point; readonly to: Point; readonly adds: boolean }

export type GestureOf<Kind extends Gesture['kind']> = Extract<Gesture, { kind: Kind }>

export const resting: Gesture = { kind: 'resting' }

/** One finished gesture, as the user would name it in "Undo ...". */
export interface DrawnAction {
  readonly name: string
  readonly commands: readonly SketchCommand[]
  /** What is selected after it; null leaves the selection. */
  readonly select: readonly string[] | null
  /** Where a refusal is shown. */
  readonly at: Point
}

export interface ToolStep {
  readonly gesture: Gesture
  readonly action?: DrawnAction
  readonly select?: readonly string[]
  /** Words for the place of the pointer when something typed cannot be read. */
  readonly refusal?: { readonly sentence: string; readonly at: Point }
}

/** A tool: what it does with each input, and what the job would be in the middle of the gesture. */
export interface Tool {
  readonly step: (gesture: Gesture, input: Input, around: Surroundings) => ToolStep
  /** The commands a gesture would end in if it ended now; drawn as a preview. */
  readonly draft: (gesture: Gesture, around: Surroundings) => readonly SketchCommand[]
}
