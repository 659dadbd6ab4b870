import type { RoomParts } from '../project/room-parts.ts'
import { builtSurfaces } from './built-surfaces.ts'
import { ceilingSurfaces } from './ceiling-surface.ts'
import { figureWords } from './figure-words.ts'
import { openingSurfaces } from './opening-surfaces.ts'
import { surveyRoom, type TakeOffRules } from './room-survey.ts'
import { derivationOf, type Explain, MeasuredSurface, type SurfaceDraft } from './surface-draft.ts'
import type { SurfaceQuantity } from './takeoff-types.ts'
import { trimSurfaces } from './trim-surfaces.ts'
import { wallSurfaces } from './wall-surfaces.ts'

/** Every paintable surface of one room: ceiling, walls, trim, openings, built work. */
export function roomTakeOff(parts: RoomParts, rules: TakeOffRules): readonly SurfaceQuantity[] {
  const explain = explainRoom(parts, rules)
  return draftRoom(parts, rules).map((draft) => new MeasuredSurface(draft, explain))
}

function draftRoom(parts: RoomParts, rules: TakeOffRules): readonly SurfaceDraft[] {
  const survey = surveyRoom(parts, rules)
  return [
    ...ceilingSurfaces(survey),
    ...wallSurfaces(survey),
    ...trimSurfaces(survey),
    ...openingSurfaces(survey),
    ...builtSurfaces(survey),
  ]
}

/**
 * The room is measured once more when somebody first asks how one of its figures came about. Keeping every line of every surface at hand
 * would cost more than the figures themselves.
 */
function explainRoom(parts: RoomParts, rules: TakeOffRules): Explain {
  let lines: ReadonlyMap<string, SurfaceQuantity['derivation']> | null = null
  return (key) => {
    lines ??= new Map(
      draftRoom(parts, rules).map((draft) => [
        draft.face.key,
        derivationOf(draft, figureWords(rules.system)),
      ]),
    )
    return lines.get(key) ?? []
  }
}
