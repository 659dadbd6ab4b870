import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { records } from '../../core/project/job.ts'
import { granted } from '../storage/books.ts'
import { askFrom, storedJob } from './ask-host.ts'
import { browserJourney } from './hosts.ts'

/** A sheet seen at an angle in a photo of 1000 x 800 pixels: upper left, upper right, lower right, lower left. */
const corners = [
  [300, 200],
  [700, 240],
  [900, 700],
  [100, 650],
] as const

/** The photo: the sheet is dark on a light table. */
function photoBy(page: Page): Promise<readonly number[]> {
  return page.evaluate(async (outline) => {
    const canvas = new OffscreenCanvas(1000, 800)
    const pen = canvas.getContext('2d')
    if (pen === null) throw new Error('nothing to draw with')
    pen.fillStyle = '#eeeeee'
    pen.fillRect(0, 0, 1000, 800)
    pen.fillStyle = '#202020'
    pen.beginPath()
    for (const [x, y] of outline) pen.lineTo(x, y)
    pen.fill()
    const blob = await canvas.convertToBlob({ type: 'image/png' })
    return [...new Uint8Array(await blob.arrayBuffer())]
  }, corners)
}

/** The sides of the rectangle around what is dark in a picture, in pixels, and how much of it is dark. */
function darkBox(page: Page, address: string) {
  return page.evaluate(async (source) => {
    const image = new Image()
    image.src = source
    await image.decode()
    const { naturalWidth: wide, naturalHeight: high } = image
    const pen = new OffscreenCanvas(wide, high).getContext('2d')
    pen?.drawImage(image, 0, 0)
    const { data } = pen?.getImageData(0, 0, wide, high) ?? { data: [] }
    const [columns, rows] = [new Set<number>(), new Set<number>()]
    let count = 0
    for (let pixel = 0; pixel < wide * high; pixel++) {
      if ((data[pixel * 4] ?? 255) > 128) continue
      count++
      columns.add(pixel % wide)
      rows.add(Math.floor(pixel / wide))
    }
    return { width: columns.size, height: rows.size, share: count / (columns.size * rows.size) }
  }, address)
}

browserJourney('a photo taken at an angle is squared up by four corners, with one undo', async ({ page }) => {
  await page.getByTestId('house-figures').waitFor()
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^Put a plan under it/ }).click(),
  ])
  const buffer = Buffer.from(await photoBy(page))
  await chooser.setFiles({ name: 'angle.png', mimeType: 'image/png', buffer })
  await page.getByRole('radio', { name: 'By a rectangle' }).click({ force: true })
  const box = await page.locator('.underlay-picture').boundingBox()
  if (box === null) throw new Error('the picture is not shown')
  for (const [across, down] of corners) {
    await page.mouse.click(box.x + (across / 1000) * box.width, box.y + (down / 800) * box.height)
  }
  await page.getByLabel('From 1 to 2').fill("20'")
  await page.getByLabel('From 2 to 3').fill("15'")
  await page.keyboard.press('Tab')
  await page.getByRole('button', { name: 'Square it up' }).click()
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByRole('button', { name: 'Undo: Square the picture up' }).waitFor()
  await page.getByText('✓ Stored').waitFor()

  const underlay = records((await storedJob(page)).storeys).find((storey) => storey.underlay)?.underlay
  const kept = granted(await askFrom(page, 'readPicture', { hash: underlay?.picture ?? '' }))
  const dark = await darkBox(page, `data:${kept.mediaType};base64,${kept.base64}`)
  // A click hits within a pixel of the screen, which is three of the photo.
  const scale = (underlay?.mmPerPixel ?? 0) / 304.8
  expect(Math.abs(dark.width * scale - 20)).toBeLessThan(0.4)
  expect(Math.abs(dark.height * scale - 15)).toBeLessThan(0.4)
  expect(dark.share).toBeGreaterThan(0.97)

  await page.getByRole('button', { name: 'Undo: Square the picture up' }).click()
  await page.getByRole('button', { name: 'Undo: Put a picture under the sketch' }).waitFor()
})
