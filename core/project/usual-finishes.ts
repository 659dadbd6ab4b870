import type { Colour, ColourId, Finish } from './survey-records.ts'
import { colourIdSchema, finishIdSchema } from './survey-records.ts'
import type { ProductClass, Sheen, SurfaceClass } from './vocabulary.ts'

/** What a class of surface usually gets: common practice in lived-in houses, and every part of it a choice of the owner. */
export const usualFinishes: Readonly<
  Record<SurfaceClass, { readonly sheen: Sheen; readonly productClass: ProductClass }>
> = {
  ceiling: { sheen: 'flat', productClass: 'latexCeiling' },
  walls: { sheen: 'eggshell', productClass: 'latexWall' },
  wainscot: { sheen: 'satin', productClass: 'waterborneEnamel' },
  trim: { sheen: 'satin', productClass: 'waterborneEnamel' },
  doors: { sheen: 'satin', productClass: 'waterborneEnamel' },
  sash: { sheen: 'satin', productClass: 'waterborneEnamel' },
  stairs: { sheen: 'satin', productClass: 'floorEnamel' },
  radiators: { sheen: 'satin', productClass: 'radiatorEnamel' },
  builtWork: { sheen: 'satin', productClass: 'waterborneEnamel' },
}

/** White goes on these in a new job; walls are painted too, but their color waits for the client. Stairs and radiators wait to be chosen. */
const whiteClasses = ['ceiling', 'wainscot', 'trim', 'doors', 'sash', 'builtWork'] as const

/** The finishes a new job starts with, for the whole house, so that a price moves from the first finding on. */
export function startingFinishes(white: ColourId): readonly Finish[] {
  const finish = (surfaceClass: SurfaceClass, colourId: ColourId | null): Finish => ({
    id: finishIdSchema.parse(`finish-${surfaceClass}`),
    scope: { level: 'house', surfaceClass },
    paint: true,
    colourId,
    ...usualFinishes[surfaceClass],
  })
  return [finish('walls', null), ...whiteClasses.map((surfaceClass) => finish(surfaceClass, white))]
}

/** The first white of the shop's list, or a plain one where the list has none. */
export function whiteOf(colours: readonly Colour[]): Colour {
  const plainWhite: Colour = {
    id: colourIdSchema.parse('white'),
    name: 'White',
    code: '',
    depth: 'white',
    shown: '#ffffff',
  }
  return colours.find((colour) => colour.depth === 'white') ?? plainWhite
}
