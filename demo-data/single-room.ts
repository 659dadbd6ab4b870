import { emptyJob, tableOf } from '../core/project/empty-job.ts'
import type { Job, JobId } from '../core/project/job.ts'
import type { Storey, StoreyId } from '../core/project/sketch-records.ts'
import type { ColourId, Existing, ExistingId, Finish, FinishId } from '../core/project/survey-records.ts'
import type { SurfaceClass } from '../core/project/vocabulary.ts'
import {
  casing,
  drawOpening,
  drawRoom,
  flat,
  type OpeningInches,
  sash,
  slab,
  trimRun,
  type WallInches,
} from './drawing.ts'
import { demoShop } from './shop.ts'

const storey: Storey = { id: 'ground' as StoreyId, name: 'First floor', level: 0 }

/** What both small rooms share: one square casing, a flush door, a double-hung window without divided lights. */
const square = casing(4, 5, 'mitred', false)

export const door: Omit<OpeningInches, 'room' | 'wall' | 'at'> = {
  id: 'door',
  kind: 'door',
  width: 32,
  height: 80,
  jamb: 4,
  casing: square,
  slab: slab('flush', { paintFar: false }),
}

export const window: Omit<OpeningInches, 'room' | 'wall' | 'at'> = {
  id: 'window',
  kind: 'window',
  width: 36,
  height: 48,
  sill: 36,
  casing: square,
  sash: sash('doubleHung', 1, 1),
}

function now(
  id: string,
  surfaceClass: SurfaceClass,
  of: Pick<Existing, 'substrate' | 'coat' | 'sheen' | 'depth'>,
): Existing {
  return { id: id as ExistingId, scope: { level: 'house', surfaceClass }, textured: false, ...of }
}

function finish(
  id: string,
  surfaceClass: SurfaceClass,
  of: Pick<Finish, 'sheen' | 'productClass'> & { readonly colour: string },
): Finish {
  const { colour, sheen, productClass } = of
  const scope = { level: 'house', surfaceClass } as const
  return { id: id as FinishId, scope, paint: true, colourId: colour as ColourId, sheen, productClass }
}

const broad = { substrate: 'gypsumBoard', coat: 'latexFlat', sheen: 'flat', depth: 'white' } as const
const wood = { substrate: 'wood', coat: 'latexGlossy', sheen: 'semiGloss', depth: 'white' } as const
const enamel = { colour: 'trim-white', sheen: 'satin', productClass: 'waterborneEnamel' } as const

/** A job of one room 8 ft high with a door, a window and a 5 in baseboard, sound and clean, so that every figure can be worked by hand. */
export function singleRoom(
  title: string,
  name: string,
  walls: readonly WallInches[],
  places: readonly OpeningInches[],
): Job {
  const room = drawRoom({ id: 'room', storey: 'ground', name, use: 'bedroom', walls, ceiling: flat(96) })
  const header = {
    id: `demo-${title.toLowerCase().replaceAll(/[^a-z]+/g, '-')}` as JobId,
    title,
    client: 'A worked example',
    phones: '',
    mail: '',
    site: '2 Example Street',
    access: '',
    yearBuilt: 1994,
    occupied: false,
    childrenOrPets: false,
    startsOn: '2027-04-05',
    planFor: 'balanced',
    timeZone: 'America/Chicago',
    unitSystem: 'imperial',
    paper: 'letter',
    isDemonstration: true,
    isPutAway: false,
    proposalNumber: null,
    air: {
      temperatureC: 20,
      relativeHumidityPercent: 45,
      outdoorTemperatureC: 12,
      surfaceTemperatureC: null,
    },
  } as const
  return {
    ...emptyJob(header, demoShop, [storey]),
    rooms: tableOf([room]),
    openings: tableOf(places.map((place) => drawOpening([room], place))),
    trimRuns: tableOf([{ ...trimRun('room', 'baseboard', 5, 6), profiled: false }]),
    existing: tableOf([
      now('now-ceiling', 'ceiling', broad),
      now('now-walls', 'walls', broad),
      now('now-trim', 'trim', wood),
      now('now-doors', 'doors', wood),
      now('now-sash', 'sash', wood),
    ]),
    finishes: tableOf([
      finish('ceiling', 'ceiling', { colour: 'ceiling-white', sheen: 'flat', productClass: 'latexCeiling' }),
      finish('walls', 'walls', { colour: 'oat', sheen: 'matte', productClass: 'latexWall' }),
      finish('trim', 'trim', enamel),
      finish('doors', 'doors', enamel),
      finish('sash', 'sash', enamel),
    ]),
  }
}
