import type { RoomParts } from '../project/room-parts.ts'
import { builtSurfaces } from './built-surfaces.ts'
import { ceilingSurfaces } from './ceiling-surface.ts'
import { openingSurfaces } from './opening-surfaces.ts'
import { surveyRoom, type TakeOffRules } from './room-survey.ts'
import type { SurfaceQuantity } from './takeoff-types.ts'
import { trimSurfaces } from './trim-surfaces.ts'
import { wallSurfaces } from './wall-surfaces.ts'

/** Every paintable surface of one room: ceiling, walls, trim, openings, built work. */
export function roomTakeOff(parts: RoomParts, rules: TakeOffRules): readonly SurfaceQuantity[] {
  const survey = surveyRoom(parts, rules)
  return [
    ...ceilingSurfaces(survey),
    ...wallSurfaces(survey),
    ...trimSurfaces(survey),
    ...openingSurfaces(survey),
    ...builtSurfaces(survey),
  ]
}
