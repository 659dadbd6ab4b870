import { fail, type Outcome, succeed } from '../project/problem.ts'
import { isPdf, lookAtPicture, type PictureLook, type PictureType } from './picture-look.ts'

/** Bytes of one picture in the book; a photo of 1600 pixels as JPEG has 200 000 to 600 000. */
export const largestPicture = 2_000_000

/** Bytes of all pictures in one book, so that it can still be copied in one go. */
const mostPictureBytes = 2_000_000_000

/** Bytes of a file somebody chooses, before it is made smaller. */
const largestFile = 60_000_000

/** Pixels that are decoded at once; 120 million take 480 MB of memory for a moment. */
export const mostPixels = 120_000_000

/** Bytes of pictures that travel with a job file. */
export const mostBytesInFile = 36_000_000

/** The longer side in pixels: to look at closely, and for lists, plan and paper. */
export const photoSides = { large: 1600, small: 480 } as const

/** The longer side of a shop's logo, which is printed 60 mm wide at most: 250 dots to the inch. */
export const logoSide = 600

/** The longer side of a picture under the sketch. */
export const planSide = 2400

/**
 * Whether a file somebody chose can be taken. The answer says what it is; a problem says what is wrong in words that go on after the
 * file's name.
 */
export function lookAtChosen(bytes: Uint8Array): Outcome<PictureLook> {
  const size = lookAtSize(bytes)
  if (!size.ok) return size
  const look = lookAtPicture(bytes)
  if (!look.ok) return look
  const { width, height } = look.value
  if (width * height <= mostPixels) return look
  return fail(
    'notValid',
    `It has ${width} × ${height} pixels; up to ${mostPixels / 1e6} million can be read. Save it smaller first.`,
  )
}

function lookAtSize(bytes: Uint8Array): Outcome<null> {
  if (bytes.length === 0) return fail('notValid', 'It is empty.')
  if (bytes.length <= largestFile) return succeed(null)
  return fail(
    'notValid',
    `It has ${megabytes(bytes.length)}; a file may have up to ${megabytes(largestFile)}.`,
  )
}

/** Whether a file somebody chose can be opened as PDF (ISO 32000-2, 7.5.2); a problem goes on after the file's name. */
export function lookAtPdf(bytes: Uint8Array): Outcome<null> {
  if (!isPdf(bytes)) return fail('notValid', 'It is not a PDF file.')
  return lookAtSize(bytes)
}

/**
 * Whether a picture may go into the book: bare (no place, device or words in it), upright, and not too large. The program makes its
 * pictures so; anything else comes from elsewhere.
 */
export function lookAtKept(bytes: Uint8Array): Outcome<PictureLook> {
  if (bytes.length > largestPicture) {
    return fail(
      'notValid',
      `The picture has ${megabytes(bytes.length)}; the book keeps up to ${megabytes(largestPicture)} of each.`,
    )
  }
  const look = lookAtPicture(bytes)
  if (!look.ok) return fail('notValid', `The picture cannot be kept. ${look.problem.sentence}`)
  if (!look.value.carriesData && look.value.orientation === 1) return look
  return fail(
    'notValid',
    'The picture still carries its place, device or words and was not kept. Save it again as JPEG and choose that.',
  )
}

/** The size with the longer side at most `longest` pixels; never larger than it is. */
export function sizeWithin(
  width: number,
  height: number,
  longest: number,
): { readonly width: number; readonly height: number } {
  const share = Math.min(1, longest / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) }
}

/** A picture on its way into or out of the book, known by the SHA-256 of its bytes in small hexadecimal digits. */
export interface BookPicture {
  readonly hash: string
  readonly mediaType: PictureType
  readonly bytes: Uint8Array
}

/**
 * As many pictures as fit `most` bytes, in the order given; a smaller one that comes later still goes in.
 *
 * @returns hashes to take, and how many stay behind
 */
export function picturesThatFit(
  sizes: readonly { readonly hash: string; readonly bytes: number }[],
  most: number,
): { readonly taken: readonly string[]; readonly leftOut: number } {
  const taken: string[] = []
  let left = most
  for (const { hash, bytes } of sizes) {
    if (bytes > left) continue
    left -= bytes
    taken.push(hash)
  }
  return { taken, leftOut: sizes.length - taken.length }
}

function megabytes(bytes: number): string {
  return `${Math.ceil(bytes / 100_000) / 10} MB`
}

/** Whether so many more bytes still go into a book of pictures. */
export function roomForPicture(bytesInBook: number, more: number): Outcome<null> {
  if (bytesInBook + more <= mostPictureBytes) return succeed(null)
  return fail(
    'notAllowed',
    `The book holds ${megabytes(bytesInBook)} of pictures and takes no more than ${megabytes(mostPictureBytes)}. Save old jobs as files, then delete them from the book.`,
  )
}
