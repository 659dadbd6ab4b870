import type { Room } from '../../project/sketch-records.ts'
import { formatKelvins, formatTemperature } from '../../units/temperature.ts'
import { dewPoint, surfaceTemperature } from '../air.ts'
import type { Group } from '../groups.ts'
import type { HoldNeed } from '../holds.ts'
import type { HouseRule, RoomRule, RoomView } from '../rule.ts'
import { holdDays, number } from '../step-requests.ts'

const marginSource =
  'surface at least 5 °F above the dew point: MIL-HDBK-1110 s. 9.6.6; 3 °C: application note; dew point: WMO guide No. 8, Annex 4.B'

/** Surfaces of one kind with the same cold space behind them. */
interface ColdFace {
  readonly kind: 'ceiling' | 'walls'
  readonly keys: readonly string[]
  readonly transmittance: number
  readonly insideFilm: number
}

const dewPointHold: RoomRule = {
  id: 'dew-point',
  level: 'room',
  theme: 'air',
  title: 'Cold surfaces and the dew point',
  found: 'Ceilings under an unheated attic, outside walls.',
  reason:
    'A surface near the dew point of the air is wet before anybody sees it, and paint lets go of it: work waits until the surface is 5 °F (3 °C) above it.',
  source: marginSource,
  safety: 'moisture',
  on: true,
  numbers: {
    marginC: number(3, 'C', 'Least distance of the surface from the dew point', marginSource),
    ceilingU: number(
      3.5,
      'W/m2K',
      'Heat loss of an old ceiling under an unheated space',
      'lath and plaster without insulation: ASHVE tables, memory',
    ),
    wallU: number(1.4, 'W/m2K', 'Heat loss of an old outside wall', 'wood frame without insulation, memory'),
    ceilingFilm: number(0.1, 'm2K/W', 'Inside film, heat flowing up', 'ISO 6946'),
    wallFilm: number(0.13, 'm2K/W', 'Inside film, heat flowing sideways', 'ISO 6946'),
    ...holdDays(3),
  },
  holds: (view) => coldFaces(view).flatMap((face) => dewHold(view, face)),
  notices: () => [],
}

function coldFaces(view: RoomView): readonly ColdFace[] {
  const of = (name: string) => view.book.number('dew-point', name)
  const ceiling = view.room.above === 'unheated' ? keysOf(view.groups, () => true, 'ceiling') : []
  const cold = new Set<string>(
    view.room.corners.filter((corner) => corner.behind !== 'heated').map((corner) => corner.wallId),
  )
  const walls = keysOf(view.groups, (wallId) => cold.has(wallId), 'walls')
  const faces: readonly ColdFace[] = [
    { kind: 'ceiling', keys: ceiling, transmittance: of('ceilingU'), insideFilm: of('ceilingFilm') },
    { kind: 'walls', keys: walls, transmittance: of('wallU'), insideFilm: of('wallFilm') },
  ]
  return faces.filter((face) => face.keys.length > 0)
}

function keysOf(
  groups: readonly Group[],
  isCold: (wallId: string) => boolean,
  kind: ColdFace['kind'],
): readonly string[] {
  return groups
    .flatMap((group) => group.quantities)
    .filter(({ surface }) =>
      kind === 'ceiling' ? surface.kind === 'ceiling' : surface.kind === 'wall' && isCold(surface.wallId),
    )
    .map((quantity) => quantity.key)
}

function dewHold(view: RoomView, face: ColdFace): readonly HoldNeed[] {
  const { temperatureC, relativeHumidityPercent, outdoorTemperatureC, surfaceTemperatureC } =
    view.job.header.air
  const { unitSystem } = view.job.header
  const estimate = surfaceTemperature(temperatureC, outdoorTemperatureC, face.transmittance, face.insideFilm)
  const surface = surfaceTemperatureC ?? estimate
  const dew = dewPoint(temperatureC, relativeHumidityPercent)
  const margin = view.book.number('dew-point', 'marginC')
  if (surface - dew >= margin) return []
  const how = surfaceTemperatureC === null ? 'is estimated at' : 'was measured at'
  return [
    {
      kind: 'dewPoint',
      surfaceKeys: face.keys,
      reason: `${faceName(view.room, face)} ${how} ${formatTemperature(surface, unitSystem)}; the dew point of the air is ${formatTemperature(dew, unitSystem)}. That is less than ${formatKelvins(margin, unitSystem)} apart: hold the wet work there until it is warmer or the air drier, and measure the surface.`,
      since: null,
      days: view.book.number('dew-point', 'holdDays'),
      source: marginSource,
    },
  ]
}

function faceName(room: Room, face: ColdFace): string {
  return face.kind === 'ceiling'
    ? `The ceiling of ${room.name} under the unheated space`
    : `The coldest wall of ${room.name}`
}

const humidAir: RoomRule = {
  id: 'humid-air',
  level: 'room',
  theme: 'air',
  title: 'Damp air',
  found: 'Relative humidity over the limit.',
  reason: 'In very damp air water-borne paint dries slowly or not at all, and sags.',
  source: 'at most 85%: application note; over 90% may never dry: guide',
  safety: 'moisture',
  on: true,
  numbers: { mostPercent: number(85, '%', 'Most relative humidity for coating', 'application note') },
  notices: (view) => {
    const most = view.book.number('humid-air', 'mostPercent')
    const { relativeHumidityPercent } = view.job.header.air
    if (relativeHumidityPercent <= most || view.groups.length === 0) return []
    return [
      {
        kind: 'dewPoint',
        roomId: view.room.id,
        surfaceKeys: [],
        sentence: `The air in ${view.room.name} is at ${relativeHumidityPercent}% relative humidity; coating waits for ${most}% or less.`,
        source: 'at most 85%: application note',
        hold: true,
      },
    ]
  },
}

const dryingAir: HouseRule = {
  id: 'drying-air',
  level: 'house',
  theme: 'air',
  title: 'Drying by temperature and humidity',
  found: 'Air that is not about 68 °F (20 °C) and 50% humidity.',
  reason:
    'Label times are for a warm, dry room: colder or damper air makes everything wait longer. A soft default, not a law.',
  source:
    '2^((20 - T)/10): coatings note for chemically curing paint, taken over softly; humidity: shop assumption',
  safety: 'none',
  on: true,
  numbers: {
    dampFrom: number(70, '%', 'Relative humidity from which it takes longer'),
    dampFactor: number(1.5, 'times', 'How much longer'),
    wetFrom: number(85, '%', 'Relative humidity from which it takes longer still'),
    wetFactor: number(2, 'times', 'How much longer'),
  },
  order: [],
}

export const airRules = [dewPointHold, humidAir, dryingAir] as const
