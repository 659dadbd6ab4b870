/** Pictures made byte by byte: whole as far as their headers go, with nothing to be seen in them. */

const ascii = (text: string): readonly number[] => [...text].map((sign) => sign.charCodeAt(0))
const word = (value: number): readonly number[] => [value >> 8, value & 255]
const long = (value: number): readonly number[] => [...word(value >>> 16), ...word(value & 0xffff)]
const littleLong = (value: number): readonly number[] => long(value).toReversed()

function segment(marker: number, body: readonly number[]): readonly number[] {
  return [0xff, marker, ...word(body.length + 2), ...body]
}

/** TIFF data with an orientation, and a place where `latitude` is given. */
function tiff(orientation: number, isLittle: boolean): readonly number[] {
  const two = (value: number) => (isLittle ? word(value).toReversed() : word(value))
  const four = (value: number) => (isLittle ? littleLong(value) : long(value))
  return [
    ...ascii(isLittle ? 'II' : 'MM'),
    ...two(42),
    ...four(8),
    ...two(2),
    // The device, then how it lies.
    ...[...two(0x0110), ...two(2), ...four(4), ...ascii('cam\0')],
    ...[...two(0x0112), ...two(3), ...four(1), ...two(orientation), 0, 0],
    ...four(0),
  ]
}

interface JpegParts {
  readonly width: number
  readonly height: number
  /** Writes Exif data, as a camera does. */
  readonly orientation?: number
  readonly isLittle?: boolean
  readonly before?: readonly number[]
  readonly behind?: readonly number[]
}

/** A JPEG of baseline coding with one component and an empty scan. */
export function jpeg(parts: JpegParts): Uint8Array {
  const { width, height, orientation, isLittle = false, before = [], behind = [] } = parts
  const exif =
    orientation === undefined ? [] : segment(0xe1, [...ascii('Exif\0\0'), ...tiff(orientation, isLittle)])
  const frame = segment(0xc0, [8, ...word(height), ...word(width), 1, 1, 0x11, 0])
  const scan = segment(0xda, [1, 1, 0, 0, 63, 0])
  const density = segment(0xe0, [...ascii('JFIF\0'), 1, 1, 0, 0, 1, 0, 1, 0, 0])
  return new Uint8Array([
    ...[0xff, 0xd8, ...density, ...exif, ...before],
    ...[...frame, ...scan, 0x12, 0x34, 0xff, 0xd9, ...behind],
  ])
}

export function jpegComment(text: string): readonly number[] {
  return segment(0xfe, ascii(text))
}

export function jpegProfile(name: string): readonly number[] {
  return segment(0xe2, ascii(`${name}\0`))
}

/** Sums of chunks are left empty: nobody reads pixels here. */
function chunk(name: string, body: readonly number[]): readonly number[] {
  return [...long(body.length), ...ascii(name), ...body, 0, 0, 0, 0]
}

export function png(
  width: number,
  height: number,
  extra: readonly (readonly [string, string])[] = [],
): Uint8Array {
  return new Uint8Array([
    ...[0x89, ...ascii('PNG\r\n'), 0x1a, 0x0a],
    ...chunk('IHDR', [...long(width), ...long(height), 8, 2, 0, 0, 0]),
    ...extra.flatMap(([name, text]) => chunk(name, ascii(text))),
    ...chunk('IDAT', [1, 2, 3]),
    ...chunk('IEND', []),
  ])
}

/** A WebP of the extended form, with a chunk of Exif data where an orientation is given. */
export function webp(width: number, height: number, orientation?: number): Uint8Array {
  const three = (value: number) => littleLong(value).slice(0, 3)
  const part = (name: string, body: readonly number[]) => [
    ...ascii(name),
    ...littleLong(body.length),
    ...body,
    ...(body.length % 2 === 0 ? [] : [0]),
  ]
  const parts = [
    ...part('VP8X', [0, 0, 0, 0, ...three(width - 1), ...three(height - 1)]),
    ...(orientation === undefined ? [] : part('EXIF', tiff(orientation, true))),
  ]
  return new Uint8Array([...ascii('RIFF'), ...littleLong(parts.length + 4), ...ascii('WEBP'), ...parts])
}
