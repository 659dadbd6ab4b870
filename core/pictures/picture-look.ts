import { fail, type Outcome, succeed } from '../project/problem.ts'

export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp'

/** What the bytes of a picture say of it before it is decoded. */
export interface PictureLook {
  readonly mediaType: PictureType
  /** Pixels as stored; a picture that says it lies on its side is not turned yet. */
  readonly width: number
  readonly height: number
  /** How it has to be turned to stand upright, 1 to 8 (Exif 2.32, 4.6.4, tag 0x0112); 1 stands. */
  readonly orientation: number
  /** Says more than the picture: the device, the place, the moment, words. */
  readonly carriesData: boolean
}

/**
 * Reads the header of a JPEG (ITU-T T.81, annex B), PNG (W3C PNG, third edition, 5) or WebP (RFC 9649) picture and looks whether its end is
 * there. A problem says in words what is wrong with it. The pixels themselves are not looked at.
 */
export function lookAtPicture(bytes: Uint8Array): Outcome<PictureLook> {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return lookAtJpeg(bytes)
  if (startsWith(bytes, pngSign)) return lookAtPng(bytes)
  if (textAt(bytes, 0, 4) === 'RIFF' && textAt(bytes, 8, 4) === 'WEBP') return lookAtWebp(bytes)
  if (textAt(bytes, 4, 4) === 'ftyp')
    return refuse('It is a HEIC, AVIF or video file. Save it as JPEG and choose that.')
  if (isPdf(bytes))
    return refuse(
      'It is a PDF file. One can lie under a floor of the sketch (House); for a photo save the page as PNG or JPEG and choose that.',
    )
  return refuse('It is not a picture this program reads: JPEG, PNG or WebP.')
}

/** Whether a file begins as PDF files do (ISO 32000-2, 7.5.2). */
export function isPdf(bytes: Uint8Array): boolean {
  return textAt(bytes, 0, 5) === '%PDF-'
}

const pngSign = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
const cutOff = 'It is damaged: its end is missing. Copy it from the camera or phone again.'
const damaged = 'It is damaged and cannot be read. Copy it from the camera or phone again.'

/** Frame headers, which hold the size: all of 0xC0 to 0xCF but tables and arithmetic conditions (T.81, table B.1). */
function isFrameHeader(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
}

/** APP1 to APP15 but APP2 (a color profile) and APP14 (how colors are coded), and comments. APP0 says only how dense the pixels are. */
function isDataSegment(marker: number): boolean {
  return marker === 0xfe || (marker > 0xe0 && marker <= 0xef && marker !== 0xe2 && marker !== 0xee)
}

function lookAtJpeg(bytes: Uint8Array): Outcome<PictureLook> {
  let size: { readonly width: number; readonly height: number } | null = null
  let orientation = 1
  let carriesData = false
  let at = 2
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return refuse(damaged)
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xff) {
      at += 1
      continue
    }
    const length = wordAt(bytes, at + 2)
    if (length < 2 || at + 2 + length > bytes.length) return refuse(cutOff)
    if (isFrameHeader(marker)) size = { height: wordAt(bytes, at + 5), width: wordAt(bytes, at + 7) }
    if (isDataSegment(marker) || (marker === 0xe2 && textAt(bytes, at + 4, 11) !== 'ICC_PROFILE'))
      carriesData = true
    if (marker === 0xe1 && textAt(bytes, at + 4, 4) === 'Exif') {
      orientation = orientationOf(bytes.subarray(at + 10, at + 2 + length))
    }
    at += 2 + length
    // What follows a scan's header is the picture itself.
    if (marker === 0xda) break
  }
  if (size === null || size.width === 0 || size.height === 0) return refuse(damaged)
  const end = endOfImage(bytes, at)
  if (end === null) return refuse(cutOff)
  return succeed({
    mediaType: 'image/jpeg',
    ...size,
    orientation,
    carriesData: carriesData || end !== bytes.length,
  })
}

/** Where the last marker of an end stops; some cameras put bytes of their own behind it. */
function endOfImage(bytes: Uint8Array, from: number): number | null {
  for (let at = bytes.length - 2; at >= from; at--) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return at + 2
  }
  return null
}

/** From the first directory of TIFF data (Exif 2.32, 4.6.2). */
function orientationOf(tiff: Uint8Array): number {
  const isLittle = textAt(tiff, 0, 2) === 'II'
  const word = (at: number) => wordAt(tiff, at, isLittle)
  const directory = isLittle ? word(4) + word(6) * 0x1_0000 : word(4) * 0x1_0000 + word(6)
  const count = Math.min(word(directory), 500)
  for (let entry = 0; entry < count; entry++) {
    const at = directory + 2 + entry * 12
    if (word(at) !== 0x0112) continue
    const value = word(at + 8)
    return value >= 1 && value <= 8 ? value : 1
  }
  return 1
}

const pngData = ['eXIf', 'tEXt', 'zTXt', 'iTXt', 'tIME']

function lookAtPng(bytes: Uint8Array): Outcome<PictureLook> {
  if (textAt(bytes, 12, 4) !== 'IHDR') return refuse(damaged)
  const [width, height] = [longAt(bytes, 16), longAt(bytes, 20)]
  if (width === 0 || height === 0) return refuse(damaged)
  let carriesData = false
  let orientation = 1
  let at = 8
  while (at + 12 <= bytes.length) {
    const [length, name] = [longAt(bytes, at), textAt(bytes, at + 4, 4)]
    if (at + 12 + length > bytes.length) return refuse(cutOff)
    if (pngData.includes(name)) carriesData = true
    if (name === 'eXIf') orientation = orientationOf(bytes.subarray(at + 8, at + 8 + length))
    if (name === 'IEND') {
      // Bytes behind the end belong to nothing; only a picture without them is as bare as it says.
      const isBare = at + 12 + length === bytes.length
      return succeed({
        mediaType: 'image/png',
        width,
        height,
        orientation,
        carriesData: carriesData || !isBare,
      })
    }
    at += 12 + length
  }
  return refuse(cutOff)
}

function lookAtWebp(bytes: Uint8Array): Outcome<PictureLook> {
  const little = (at: number) => wordAt(bytes, at, true)
  const end = 8 + little(4) + little(6) * 0x1_0000
  if (end > bytes.length) return refuse(cutOff)
  let size: { readonly width: number; readonly height: number } | null = null
  let carriesData = false
  let orientation = 1
  let at = 12
  while (at + 8 <= end) {
    const [name, length] = [textAt(bytes, at, 4), little(at + 4) + little(at + 6) * 0x1_0000]
    const body = at + 8
    if (body + length > end) return refuse(cutOff)
    size ??= webpSize(bytes, name, body)
    if (name === 'EXIF' || name === 'XMP ') carriesData = true
    if (name === 'EXIF') {
      const start = textAt(bytes, body, 4) === 'Exif' ? body + 6 : body
      orientation = orientationOf(bytes.subarray(start, body + length))
    }
    at = body + length + (length % 2)
  }
  if (size === null || size.width === 0 || size.height === 0) return refuse(damaged)
  return succeed({ mediaType: 'image/webp', ...size, orientation, carriesData })
}

/** RFC 9649: 2.7 (VP8X), 2.5 (VP8, RFC 6386 9.1), 2.6 and 3.4 (VP8L). */
function webpSize(
  bytes: Uint8Array,
  name: string,
  body: number,
): { readonly width: number; readonly height: number } | null {
  const little = (at: number) => wordAt(bytes, at, true)
  switch (name) {
    case 'VP8X':
      return {
        width: 1 + little(body + 4) + (bytes[body + 6] ?? 0) * 0x1_0000,
        height: 1 + little(body + 7) + (bytes[body + 9] ?? 0) * 0x1_0000,
      }
    case 'VP8 ':
      return { width: little(body + 6) & 0x3fff, height: little(body + 8) & 0x3fff }
    case 'VP8L': {
      const [low, high] = [little(body + 1), little(body + 3)]
      return { width: 1 + (low & 0x3fff), height: 1 + ((low >> 14) | ((high & 0xfff) << 2)) }
    }
    default:
      return null
  }
}

function startsWith(bytes: Uint8Array, sign: readonly number[]): boolean {
  return sign.every((byte, index) => bytes[index] === byte)
}

function textAt(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length))
}

function wordAt(bytes: Uint8Array, at: number, isLittle = false): number {
  const [first, second] = [bytes[at] ?? 0, bytes[at + 1] ?? 0]
  return isLittle ? first + second * 256 : first * 256 + second
}

function longAt(bytes: Uint8Array, at: number): number {
  return wordAt(bytes, at) * 0x1_0000 + wordAt(bytes, at + 2)
}

function refuse(sentence: string): Outcome<never> {
  return fail('notValid', sentence)
}
