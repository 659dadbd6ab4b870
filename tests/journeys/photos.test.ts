import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { lookAtPicture } from '../../core/pictures/picture-look.ts'
import { records } from '../../core/project/job.ts'
import { granted } from '../storage/books.ts'
import { askFrom, storedJob } from './ask-host.ts'
import { journey } from './hosts.ts'

/** Ten sizes and ways to lie: pixels as stored, orientation of Exif (0 writes none), media type. */
const shapes = [
  [64, 48, 0, 'image/png'],
  [320, 240, 1, 'image/jpeg'],
  [200, 150, 2, 'image/jpeg'],
  [1700, 600, 3, 'image/jpeg'],
  [150, 200, 4, 'image/jpeg'],
  [250, 150, 5, 'image/jpeg'],
  [300, 200, 6, 'image/jpeg'],
  [90, 1700, 7, 'image/jpeg'],
  [180, 120, 8, 'image/jpeg'],
  [200, 200, 0, 'image/webp'],
] as const

/** Ten pictures are decoded, drawn twice and sent. */
const patience = { timeout: 20_000 }

/** A picture whose left half, as stored, is dark and whose right half is light. */
async function drawnBy(page: Page, [width, height, , type]: (typeof shapes)[number]): Promise<Buffer> {
  const bytes = await page.evaluate(
    async ([wide, high, media]) => {
      const canvas = new OffscreenCanvas(wide, high)
      const pen = canvas.getContext('2d')
      if (pen === null) throw new Error('nothing to draw with')
      pen.fillStyle = '#eeeeee'
      pen.fillRect(0, 0, wide, high)
      pen.fillStyle = '#202020'
      pen.fillRect(0, 0, wide / 2, high)
      const blob = await canvas.convertToBlob({ type: media, quality: 0.9 })
      return [...new Uint8Array(await blob.arrayBuffer())]
    },
    [width, height, type] as const,
  )
  return Buffer.from(bytes)
}

/** Exif data with an orientation, a device and a place, set in behind the first marker of a JPEG. */
function withExif(jpeg: Buffer, orientation: number): Buffer {
  if (orientation === 0) return jpeg
  const entries = Buffer.from([
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 2],
    ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 38, 0, 0, 0, 0],
  ])
  const body = Buffer.concat([
    Buffer.from('Exif\0\0'),
    entries,
    Buffer.from('GPSLatitude 41.5 Example Camera'),
  ])
  const head = Buffer.from([0xff, 0xe1, (body.length + 2) >> 8, (body.length + 2) & 255])
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)])
}

/** Whether the left and the upper edge of a picture are dark, as it is shown. */
function edgesOf(page: Page, address: string): Promise<{ readonly left: boolean; readonly top: boolean }> {
  return page.evaluate(async (source) => {
    const image = new Image()
    image.src = source
    await image.decode()
    const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight)
    const pen = canvas.getContext('2d', { willReadFrequently: true })
    pen?.drawImage(image, 0, 0)
    const isDark = (x: number, y: number) => (pen?.getImageData(x, y, 1, 1).data[0] ?? 255) < 128
    const [wide, high] = [image.naturalWidth, image.naturalHeight]
    return {
      left: isDark(2, high >> 1) && !isDark(wide - 3, high >> 1),
      top: isDark(wide >> 1, 2) && !isDark(wide >> 1, high - 3),
    }
  }, address)
}

/** Where the dark half ends up: left for 1 and 4, right for 2 and 3, above for 5 and 6, below for 7 and 8 (Exif 2.32, 4.6.4). */
function expectedEdges(orientation: number): { readonly left: boolean; readonly top: boolean } {
  return { left: [0, 1, 4].includes(orientation), top: [5, 6].includes(orientation) }
}

journey(
  'photos of ten shapes come upright, small and bare into the book, damaged ones are refused, undo brings one back',
  async ({ page }) => {
    await page.getByTestId('house-figures').waitFor()
    await page.keyboard.press('Alt+2')
    const drawn: Buffer[] = []
    for (const shape of shapes) drawn.push(withExif(await drawnBy(page, shape), shape[2]))
    const files = drawn.map((buffer, index) => ({
      name: `${index}.${shapes[index]?.[3].slice(6)}`,
      mimeType: shapes[index]?.[3] ?? '',
      buffer,
    }))
    const broken = {
      name: 'broken.jpg',
      mimeType: 'image/jpeg',
      buffer: (drawn[3] ?? Buffer.alloc(0)).subarray(0, 3000),
    }
    await page.getByRole('tab', { name: /^Photos/ }).click()
    const room = page.getByRole('tabpanel', { name: /^Photos/ })
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      room.getByRole('button', { name: /^Add photos/ }).click(),
    ])
    await chooser.setFiles([...files, broken])
    await page.getByText('broken.jpg: It is damaged: its end is missing.').waitFor()
    await expect.poll(() => room.locator('.photo-card img').count(), patience).toBe(shapes.length)
    await page.getByText('✓ Stored').waitFor()

    const photos = records((await storedJob(page)).photos)
    expect(photos).toHaveLength(shapes.length)
    for (const [index, photo] of photos.entries()) {
      const [width, height, orientation] = shapes[index] ?? [0, 0, 0]
      const [wide, high] = orientation > 4 ? [height, width] : [width, height]
      const share = Math.min(1, 1600 / Math.max(wide, high))
      const { base64 } = granted(await askFrom(page, 'readPicture', { hash: photo.picture }))
      const bytes = Buffer.from(base64, 'base64')
      expect(granted(lookAtPicture(bytes))).toEqual({
        ...{ mediaType: 'image/jpeg', orientation: 1, carriesData: false },
        ...{ width: Math.round(wide * share), height: Math.round(high * share) },
      })
      expect(['Exif', 'GPS', 'Camera'].filter((word) => bytes.includes(word))).toEqual([])
      const small = granted(await askFrom(page, 'readPicture', { hash: photo.small }))
      const address = `data:${small.mediaType};base64,${small.base64}`
      expect(await edgesOf(page, address)).toEqual(expectedEdges(orientation))
    }

    await page.getByRole('button', { name: 'OK', exact: true }).click()
    await room.locator('.photo-card').first().click()
    await page.getByRole('dialog').getByLabel('Note').fill('north wall')
    await page.getByRole('dialog').getByLabel('Note').press('Enter')
    await page.getByRole('button', { name: 'Remove it' }).click()
    await expect.poll(() => room.locator('.photo-card').count(), patience).toBe(shapes.length - 1)
    await page.getByRole('button', { name: /^Undo: Remove a photo/ }).click()
    await expect.poll(() => room.locator('.photo-card img').count(), patience).toBe(shapes.length)
  },
)
