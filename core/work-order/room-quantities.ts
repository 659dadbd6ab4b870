import type { RoomId } from '../project/sketch-records.ts'
import { type SurfaceClass, surfaceClasses } from '../project/vocabulary.ts'
import type { SurfaceQuantity, Takeoff } from '../quantities/takeoff-types.ts'
import { surfaceClassWords } from '../specification/trade-words.ts'
import { formatArea } from '../units/area.ts'
import { formatLength, type LengthUnitSystem } from '../units/length.ts'
import { inRoom } from './by-room.ts'
import type { QuantityLine } from './document-types.ts'

/** One line per class of surface in the room; nothing is shown where there is nothing. */
export function roomQuantities(
  takeoff: Takeoff,
  roomId: RoomId,
  system: LengthUnitSystem,
): readonly QuantityLine[] {
  return surfaceClasses.flatMap((surfaceClass) => {
    const surfaces = inRoom(takeoff.surfaces, roomId).filter(
      (surface) => surface.surfaceClass === surfaceClass,
    )
    return surfaces.length === 0 ? [] : [quantityLine(surfaceClass, surfaces, system)]
  })
}

function quantityLine(
  surfaceClass: SurfaceClass,
  surfaces: readonly SurfaceQuantity[],
  system: LengthUnitSystem,
): QuantityLine {
  const total = (of: (surface: SurfaceQuantity) => number) =>
    surfaces.reduce((sum, surface) => sum + of(surface), 0)
  const lengthText = (of: (surface: SurfaceQuantity) => number) =>
    total(of) === 0 ? '' : formatLength(total(of), system)
  const count = total((surface) => surface.count)
  return {
    surfaceClass: surfaceClassWords[surfaceClass],
    netArea: formatArea(
      total((surface) => surface.netArea),
      system,
    ),
    length: lengthText((surface) => surface.length),
    cuttingIn: lengthText((surface) => surface.cuttingIn),
    masking: lengthText((surface) => surface.masking),
    glassPerimeter: lengthText((surface) => surface.glassPerimeter),
    count: count === 0 ? '' : String(count),
  }
}
