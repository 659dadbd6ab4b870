import { useEffect, useState } from 'react'
import { largestPicture, lookAtChosen, sizeWithin } from '../../core/pictures/picture-bounds.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { ask } from '../bridge/client.ts'

/** Pictures that were read lately, by hash, as data addresses. They never change, for the hash is of their bytes. */
const known = new Map<string, Promise<Outcome<string>>>()
/** Small ones take about 60 kB each. */
const mostKnown = 400

/** A data address of a picture in the book, or why there is none. */
export function pictureAddress(hash: string): Promise<Outcome<string>> {
  const there = known.get(hash)
  if (there !== undefined) return there
  const reading = readAddress(hash)
  known.set(hash, reading)
  const [oldest] = known.keys()
  if (known.size > mostKnown && oldest !== undefined) known.delete(oldest)
  return reading
}

async function readAddress(hash: string): Promise<Outcome<string>> {
  const read = await ask('readPicture', { hash })
  if (read.ok) return succeed(`data:${read.value.mediaType};base64,${read.value.base64}`)
  known.delete(hash)
  return read
}

/** Null while it is being read. */
export function usePicture(hash: string): Outcome<string> | null {
  const [read, setRead] = useState<Outcome<string> | null>(null)
  useEffect(() => {
    let isWanted = true
    setRead(null)
    void pictureAddress(hash).then((answer) => isWanted && setRead(answer))
    return () => {
      isWanted = false
    }
  }, [hash])
  return read
}

/** Addresses of those pictures that are there, once all were asked for; pages that show many are laid out once. */
export function usePictures(hashes: readonly string[]): ReadonlyMap<string, string> {
  const [addresses, setAddresses] = useState<ReadonlyMap<string, string>>(new Map())
  const wanted = hashes.join(' ')
  useEffect(() => {
    let isWanted = true
    const all = wanted === '' ? [] : wanted.split(' ')
    void Promise.all(all.map(async (hash) => [hash, await pictureAddress(hash)] as const)).then((read) => {
      const there = read.flatMap(([hash, answer]) => (answer.ok ? [[hash, answer.value] as const] : []))
      if (isWanted) setAddresses(new Map(there))
    })
    return () => {
      isWanted = false
    }
  }, [wanted])
  return addresses
}

type Drawn = ImageBitmap | HTMLCanvasElement

export interface DrawnPicture {
  readonly hash: string
  readonly width: number
  readonly height: number
}

/**
 * Takes a file somebody chose into the book, once for each longer side in pixels: turned upright, made smaller, and drawn anew, so that nothing
 * but the pixels is left of it. A problem goes on after the file's name.
 */
export async function takePicture(
  file: Blob,
  sides: readonly number[],
): Promise<Outcome<readonly DrawnPicture[]>> {
  const look = lookAtChosen(new Uint8Array(await file.arrayBuffer()))
  if (!look.ok) return look
  const decoded = await decode(file)
  if (!decoded.ok) return decoded
  try {
    return await keepDrawn(decoded.value, sides)
  } finally {
    decoded.value.close()
  }
}

/** Puts what was decoded or drawn into the book, once for each longer side in pixels, as JPEG. */
export async function keepDrawn(
  decoded: Drawn,
  sides: readonly number[],
): Promise<Outcome<readonly DrawnPicture[]>> {
  const drawn: DrawnPicture[] = []
  for (const longest of sides) {
    const size = sizeWithin(decoded.width, decoded.height, longest)
    const picture = await drawn2d(decoded, size)
    if (!picture.ok) return picture
    const kept = await ask('keepPicture', { base64: await base64Of(picture.value) })
    if (!kept.ok) return kept
    drawn.push({ hash: kept.value.hash, ...size })
  }
  return succeed(drawn)
}

/** Turned as the file says it lies: what Chromium does of itself. */
async function decode(file: Blob): Promise<Outcome<ImageBitmap>> {
  try {
    return succeed(await createImageBitmap(file))
  } catch {
    return fail('notValid', 'It is damaged and cannot be read. Copy it from the camera or phone again.')
  }
}

/** The first that is small enough for the book; 2000 pixels of grass take 0.6 of its bound at the best of them. */
const qualities = [0.84, 0.7, 0.5]

async function drawn2d(
  picture: Drawn,
  { width, height }: { readonly width: number; readonly height: number },
): Promise<Outcome<Blob>> {
  const canvas = new OffscreenCanvas(width, height)
  const pen = canvas.getContext('2d')
  if (pen === null)
    return fail('hostFailed', 'It cannot be drawn just now. Close other pictures and try again.')
  // What can be seen through is white, as on paper.
  pen.fillStyle = '#ffffff'
  pen.fillRect(0, 0, width, height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(picture, 0, 0, width, height)
  for (const quality of qualities) {
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality })
    if (blob.size <= largestPicture) return succeed(blob)
  }
  return fail('notValid', 'It stays too large when it is made smaller. Save it with fewer pixels first.')
}

async function base64Of(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer())
  const piece = 0x8000
  const signs = Array.from({ length: Math.ceil(bytes.length / piece) }, (_, index) =>
    String.fromCharCode(...bytes.subarray(index * piece, (index + 1) * piece)),
  )
  return btoa(signs.join(''))
}
