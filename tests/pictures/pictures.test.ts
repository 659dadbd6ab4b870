import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  largestPicture,
  lookAtChosen,
  lookAtKept,
  lookAtPdf,
  picturesThatFit,
  roomForPicture,
  sizeWithin,
} from '../../core/pictures/picture-bounds.ts'
import { lookAtPicture } from '../../core/pictures/picture-look.ts'
import { jpeg, jpegComment, jpegProfile, png, webp } from './small-pictures.ts'

/** Ten sizes and orientations, of three kinds. */
const whole = [
  ['image/jpeg', 1, 1, 1, jpeg({ width: 1, height: 1 })],
  ['image/jpeg', 640, 480, 1, jpeg({ width: 640, height: 480, orientation: 1 })],
  ['image/jpeg', 4032, 3024, 6, jpeg({ width: 4032, height: 3024, orientation: 6 })],
  ['image/jpeg', 4032, 3024, 8, jpeg({ width: 4032, height: 3024, orientation: 8, isLittle: true })],
  ['image/jpeg', 3000, 4000, 3, jpeg({ width: 3000, height: 4000, orientation: 3 })],
  ['image/jpeg', 17, 5000, 5, jpeg({ width: 17, height: 5000, orientation: 5, isLittle: true })],
  ['image/png', 900, 600, 1, png(900, 600)],
  ['image/png', 70_000, 2, 1, png(70_000, 2)],
  ['image/webp', 1920, 1080, 1, webp(1920, 1080)],
  ['image/webp', 1080, 1920, 7, webp(1080, 1920, 7)],
] as const

test.each(whole)(
  'a %s picture of %i by %i, lying as %i, is read',
  (mediaType, width, height, orientation, bytes) => {
    expect(lookAtPicture(bytes)).toMatchObject({ ok: true, value: { mediaType, width, height, orientation } })
  },
)

test('the program keeps only pictures that say nothing but what they show', () => {
  const bare = [
    jpeg({ width: 4, height: 3 }),
    png(4, 3),
    webp(4, 3),
    jpeg({ width: 4, height: 3, before: jpegProfile('ICC_PROFILE') }),
  ]
  for (const bytes of bare) expect(lookAtKept(bytes).ok).toBe(true)
  const telling = [
    jpeg({ width: 4, height: 3, orientation: 1 }),
    jpeg({ width: 4, height: 3, before: jpegComment('taken at 1 Example Lane') }),
    jpeg({ width: 4, height: 3, before: jpegProfile('MPF') }),
    jpeg({ width: 4, height: 3, behind: [1, 2, 3] }),
    png(4, 3, [['tEXt', 'Author\0somebody']]),
    png(4, 3, [['eXIf', 'MM\0*\0\0\0\b']]),
    webp(4, 3, 1),
  ]
  for (const bytes of telling) {
    expect(lookAtKept(bytes)).toMatchObject({ ok: false, problem: { kind: 'notValid' } })
  }
})

test('a picture that was cut off, is none or is too much is refused in words', () => {
  const said = (bytes: Uint8Array) => {
    const look = lookAtChosen(bytes)
    return look.ok ? 'taken' : look.problem.sentence
  }
  const photo = jpeg({ width: 40, height: 30, orientation: 6 })
  expect(said(photo.subarray(0, photo.length - 2))).toMatch(/its end is missing/)
  expect(said(photo.subarray(0, 40))).toMatch(/its end is missing|damaged/)
  expect(said(png(4, 3).subarray(0, 50))).toMatch(/its end is missing/)
  expect(said(webp(4, 3).subarray(0, 20))).toMatch(/its end is missing/)
  expect(said(new Uint8Array())).toBe('It is empty.')
  expect(said(new TextEncoder().encode('%PDF-1.7 and more'))).toMatch(
    /^It is a PDF file\. .* save the page as PNG or JPEG/,
  )
  expect(said(new TextEncoder().encode('\0\0\0\x18ftypheic and more'))).toMatch(/HEIC/)
  expect(said(new TextEncoder().encode('a letter'))).toMatch(/not a picture/)
  expect(said(png(20_000, 20_000))).toBe(
    'It has 20000 × 20000 pixels; up to 120 million can be read. Save it smaller first.',
  )
  expect(said(new Uint8Array(60_000_001))).toBe('It has 60.1 MB; a file may have up to 60 MB.')
})

test('a PDF file is opened up to a size', () => {
  const bytes = new Uint8Array(60_000_001)
  bytes.set(new TextEncoder().encode('%PDF-1.7'))
  expect(lookAtPdf(bytes.subarray(0, 60_000_000)).ok).toBe(true)
  expect(lookAtPdf(bytes)).toMatchObject({
    problem: { sentence: 'It has 60.1 MB; a file may have up to 60 MB.' },
  })
  expect(lookAtPdf(png(4, 3))).toMatchObject({ problem: { sentence: 'It is not a PDF file.' } })
})

test('no bytes make the reading throw', () => {
  const cuts = whole.map(([, , , , bytes]) => bytes)
  fc.assert(
    fc.property(fc.constantFrom(...cuts), fc.nat(), fc.nat(255), fc.nat(), (bytes, at, value, length) => {
      const changed = bytes.slice(0, length % (bytes.length + 1))
      changed[at % Math.max(1, changed.length)] = value
      const look = lookAtPicture(changed)
      expect(look.ok ? look.value.width > 0 : look.problem.sentence.length > 10).toBe(true)
    }),
  )
})

test('sizes keep their shape and never grow', () => {
  expect(sizeWithin(4032, 3024, 1600)).toEqual({ width: 1600, height: 1200 })
  expect(sizeWithin(300, 4000, 1600)).toEqual({ width: 120, height: 1600 })
  expect(sizeWithin(640, 480, 1600)).toEqual({ width: 640, height: 480 })
  expect(sizeWithin(1, 9000, 480)).toEqual({ width: 1, height: 480 })
})

test('bounds are said with what is there and what may be', () => {
  expect(lookAtKept(new Uint8Array(largestPicture + 1))).toMatchObject({
    problem: { sentence: 'The picture has 2.1 MB; the book keeps up to 2 MB of each.' },
  })
  expect(roomForPicture(1_999_000_000, 900_000)).toMatchObject({ ok: true })
  expect(roomForPicture(1_999_000_000, 1_100_000)).toMatchObject({
    ok: false,
    problem: { kind: 'notAllowed' },
  })
})

test('a file takes as many pictures as have room in it, smaller ones behind a large one too', () => {
  const sizes = [
    { hash: 'a', bytes: 40 },
    { hash: 'b', bytes: 70 },
    { hash: 'c', bytes: 60 },
  ]
  expect(picturesThatFit(sizes, 100)).toEqual({ taken: ['a', 'c'], leftOut: 1 })
  expect(picturesThatFit(sizes, 170)).toEqual({ taken: ['a', 'b', 'c'], leftOut: 0 })
})
