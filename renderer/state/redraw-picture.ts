import type { ProjectiveMap } from '../../core/geometry/projective.ts'
import { redrawn } from '../../core/pictures/redraw.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { type DrawnPicture, keepDrawn, pictureAddress } from './pictures.ts'

type Size = { readonly width: number; readonly height: number }

/** Draws a picture of the book anew, each pixel from where `map` leads in it, and keeps that as another picture. */
export async function redrawPicture(
  hash: string,
  map: ProjectiveMap,
  size: Size,
): Promise<Outcome<DrawnPicture>> {
  const read = await pictureAddress(hash)
  if (!read.ok) return read
  const image = new Image()
  image.src = read.value
  await image.decode()
  const source = penOf({ width: image.naturalWidth, height: image.naturalHeight })
  const target = penOf(size)
  if (source === null || target === null) return fail('hostFailed', 'It cannot be drawn just now. Try again.')
  source.drawImage(image, 0, 0)
  const { data } = redrawn(source.getImageData(0, 0, image.naturalWidth, image.naturalHeight), map, size)
  const pixels = target.createImageData(size.width, size.height)
  pixels.data.set(data)
  target.putImageData(pixels, 0, 0)
  const kept = await keepDrawn(target.canvas, [Math.max(size.width, size.height)])
  if (!kept.ok) return kept
  const [picture] = kept.value
  return picture === undefined ? fail('hostFailed', 'It was not kept. Try again.') : succeed(picture)
}

function penOf({ width, height }: Size): CanvasRenderingContext2D | null {
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  return canvas.getContext('2d', { willReadFrequently: true })
}
