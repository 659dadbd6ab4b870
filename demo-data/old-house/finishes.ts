import type { OpeningId, RoomId } from '../../core/project/sketch-records.ts'
import type { ColourId, Finish, FinishId, Scope } from '../../core/project/survey-records.ts'
import type { ProductClass, Sheen, SurfaceClass } from '../../core/project/vocabulary.ts'

function finish(
  id: string,
  scope: Scope,
  colour: string | null,
  sheen: Sheen,
  productClass: ProductClass,
  paint = true,
): Finish {
  return { id: id as FinishId, scope, paint, colourId: colour as ColourId | null, sheen, productClass }
}

function house(surfaceClass: SurfaceClass): Scope {
  return { level: 'house', surfaceClass }
}
function inRoom(room: string, surfaceClass: SurfaceClass): Scope {
  return { level: 'room', roomId: room as RoomId, surfaceClass }
}

const enamel = 'waterborneEnamel'

export const finishes: readonly Finish[] = [
  finish('ceilings', house('ceiling'), 'ceiling-white', 'flat', 'latexCeiling'),
  finish('walls', house('walls'), 'oat', 'matte', 'latexWall'),
  finish('wainscots', house('wainscot'), 'trim-white', 'satin', enamel),
  finish('trim', house('trim'), 'trim-white', 'satin', enamel),
  finish('doors', house('doors'), 'trim-white', 'satin', enamel),
  finish('sashes', house('sash'), 'trim-white', 'satin', enamel),
  finish('stairs', house('stairs'), 'trim-white', 'satin', enamel),
  finish('radiators', house('radiators'), 'trim-white', 'satin', 'radiatorEnamel'),
  finish('built-work', house('builtWork'), 'trim-white', 'satin', enamel),
  finish('dining-walls', inRoom('dining', 'walls'), 'brick-red', 'eggshell', 'latexWall'),
  finish('kitchen-walls', inRoom('kitchen', 'walls'), 'pale-sage', 'satin', 'latexWall'),
  finish('bath-walls', inRoom('bath', 'walls'), 'morning-blue', 'satin', 'latexWall'),
  finish('rear-bedroom-walls', inRoom('rear-bedroom', 'walls'), 'clay', 'matte', 'latexWall'),
  finish('east-bedroom-walls', inRoom('east-bedroom', 'walls'), 'morning-blue', 'matte', 'latexWall'),
  finish('attic-stair-steps', inRoom('attic-stair', 'stairs'), 'wet-slate', 'satin', 'floorEnamel'),
  finish('kitchen-built-work', inRoom('kitchen', 'builtWork'), null, 'satin', enamel, false),
  finish(
    'front-door-slab',
    {
      level: 'surface',
      surface: { kind: 'opening', openingId: 'front-door' as OpeningId, side: 'near', part: 'slab' },
    },
    'wet-slate',
    'semiGloss',
    enamel,
  ),
]
