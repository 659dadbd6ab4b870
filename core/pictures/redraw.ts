import { type ProjectiveMap, projected } from '../geometry/projective.ts'

/** Red, green, blue and opacity of each pixel, row by row, 0 to 255. */
export interface Pixels {
  readonly width: number
  readonly height: number
  readonly data: Uint8ClampedArray
}

/**
 * A picture of another size whose pixels are taken from where `map` leads in the source, mixed of the four pixels around (bilinear); white where the source
 * has none. Pixels lie at the middle of their squares.
 */
export function redrawn(
  source: Pixels,
  map: ProjectiveMap,
  { width, height }: { readonly width: number; readonly height: number },
): Pixels {
  const data = new Uint8ClampedArray(width * height * 4).fill(255)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const at = projected(map, { x: column + 0.5, y: row + 0.5 })
      if (at !== null) mixInto(data, (row * width + column) * 4, source, at.x - 0.5, at.y - 0.5)
    }
  }
  return { width, height, data }
}

function mixInto(data: Uint8ClampedArray, to: number, source: Pixels, x: number, y: number): void {
  const { width, height } = source
  if (x < -0.5 || y < -0.5 || x > width - 0.5 || y > height - 0.5) return
  const left = Math.min(width - 1, Math.max(0, Math.floor(x)))
  const top = Math.min(height - 1, Math.max(0, Math.floor(y)))
  const across = Math.min(1, Math.max(0, x - left))
  const down = Math.min(1, Math.max(0, y - top))
  const one = (top * width + left) * 4
  const right = left + 1 < width ? 4 : 0
  const below = top + 1 < height ? width * 4 : 0
  for (let part = 0; part < 3; part++) {
    const at = (place: number) => source.data[place + part] ?? 255
    const upper = at(one) * (1 - across) + at(one + right) * across
    const lower = at(one + below) * (1 - across) + at(one + below + right) * across
    data[to + part] = upper * (1 - down) + lower * down
  }
}
