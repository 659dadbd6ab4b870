import type { Underlay } from '../../../core/project/sketch-records.ts'
import { unitsPerMillimetre } from '../../../core/units/length.ts'
import { toScreen, type View } from '../view.ts'
import { turned } from './lettering.ts'
import type { Pen } from './pen.ts'

const opacities: Readonly<Record<Underlay['strength'], number>> = { faint: 0.25, middle: 0.5, strong: 0.85 }

/** The photo or scan of a plan that rooms are traced on. */
export function drawUnderlay(pen: Pen, underlay: Underlay, image: CanvasImageSource, view: View): void {
  const pixel = underlay.mmPerPixel * unitsPerMillimetre * view.scale
  turned(pen, toScreen(view, underlay), underlay.turnDegrees, () => {
    pen.globalAlpha = opacities[underlay.strength]
    pen.drawImage(image, 0, 0, underlay.width * pixel, underlay.height * pixel)
  })
}
