import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { records } from '../../core/project/job.ts'
import { type PdfPage, pdfOf } from '../pictures/small-pdfs.ts'
import { granted } from '../storage/books.ts'
import { askFrom, storedJob } from './ask-host.ts'
import { journey } from './hosts.ts'

/** Fax rows of one color (ITU-T T.6: each row a single V0, which is one bit) that are shown dark: a scan as copiers make it. */
const scan = {
  entries:
    '/Width 64 /Height 64 /ColorSpace /DeviceGray /BitsPerComponent 1 /Decode [1 0] /Filter /CCITTFaxDecode /DecodeParms << /K -1 /Columns 64 /Rows 64 >>',
  bytes: Buffer.alloc(8, 0xff),
}

/** Points, how it is turned; the last is a scan that fills the upper left quarter. */
const pages: readonly PdfPage[] = [
  { width: 612, height: 792 },
  { width: 792, height: 612 },
  { width: 612, height: 792, rotate: 90 },
  { width: 612, height: 792, rotate: 180 },
  { width: 595, height: 842, rotate: 270 },
  { width: 1224, height: 792, rotate: 90 },
  { width: 2592, height: 1728 },
  { width: 14_400, height: 10_000, userUnit: 10 },
  { width: 100, height: 40 },
  { width: 600, height: 300, image: scan, content: 'q 300 0 0 150 0 150 cm /Im Do Q' },
]

/** Where the dark quarter lies once the page is turned. */
const corners = { 0: 'upper left', 90: 'upper right', 180: 'lower right', 270: 'lower left' } as const

/** The size of a picture and the quarter of it that is dark. */
function lookAt(page: Page, address: string) {
  return page.evaluate(async (source) => {
    const image = new Image()
    image.src = source
    await image.decode()
    const { naturalWidth: width, naturalHeight: height } = image
    const canvas = new OffscreenCanvas(width, height)
    const pen = canvas.getContext('2d', { willReadFrequently: true })
    pen?.drawImage(image, 0, 0)
    const dark = ['upper left', 'upper right', 'lower left', 'lower right'].filter((_, index) => {
      const [x, y] = [((index % 2) * 2 + 1) / 4, (index < 2 ? 1 : 3) / 4]
      return (pen?.getImageData(x * width, y * height, 1, 1).data[0] ?? 255) < 128
    })
    return { width, height, dark }
  }, address)
}

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^Put a plan under it/ }).click(),
  ])
  await chooser.setFiles({ name, mimeType: 'application/pdf', buffer })
}

journey(
  'PDF pages of ten sizes go under a floor as they are read, damaged ones are refused',
  async ({ page }) => {
    await page.getByTestId('house-figures').waitFor()
    const refusals: readonly (readonly [Buffer, string])[] = [
      [Buffer.from('%PDF-1.7 and nothing else'), 'It is damaged and cannot be read.'],
      [pdfOf(pages).subarray(0, 900), 'It is damaged and cannot be read.'],
      [pdfOf(pages.slice(0, 1), locked()), 'It is locked with a password.'],
      [
        pdfOf([{ width: 600, height: 300, content: 'nothing of sense' }]),
        'Nothing can be seen on this page.',
      ],
    ]
    for (const [index, [bytes, sentence]] of refusals.entries()) {
      await choose(page, `refused-${index}.pdf`, bytes)
      await page.getByText(`refused-${index}.pdf: ${sentence}`).waitFor()
      await page.getByRole('button', { name: 'OK', exact: true }).click()
    }

    await choose(page, 'plans.pdf', pdfOf(pages))
    for (const [index, shape] of pages.entries()) {
      const address = await page.getByAltText(`Page ${index + 1}`, { exact: true }).getAttribute('src')
      const turned = [90, 270].includes(shape.rotate ?? 0)
      const { width, height, dark } = await lookAt(page, address ?? '')
      const ratio = turned ? shape.height / shape.width : shape.width / shape.height
      expect(Math.max(width, height)).toBe(900)
      expect(Math.abs(width - height * ratio)).toBeLessThan(2)
      expect(dark).toEqual([corners[shape.rotate ?? 0]])
      if (index < pages.length - 1) await page.getByRole('button', { name: 'Next page' }).click()
    }

    await page.getByLabel('Page, 1 to 10').fill('6')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Put page 6 under the sketch' }).click()
    await page.getByRole('heading', { name: /^Picture under/ }).waitFor()
    await page.getByRole('button', { name: 'Done', exact: true }).click()
    await page.getByText('✓ Stored').waitFor()
    const [underlay] = records((await storedJob(page)).storeys).flatMap((storey) => storey.underlay ?? [])
    expect(underlay).toMatchObject({ width: 1553, height: 2400 })
    const kept = granted(await askFrom(page, 'readPicture', { hash: underlay?.picture ?? '' }))
    expect(await lookAt(page, `data:${kept.mediaType};base64,${kept.base64}`)).toEqual({
      ...{ width: 1553, height: 2400 },
      dark: ['upper right'],
    })
    await page.getByRole('button', { name: 'Undo: Put a picture under the sketch' }).click()
    await page.getByRole('button', { name: /^Put a plan under it/ }).waitFor()
  },
)

/** Encrypted so that the empty password does not open it (ISO 32000-2, 7.6.4). */
function locked(): string {
  const hash = '00'.repeat(32)
  return `/Encrypt << /Filter /Standard /V 1 /R 2 /P -4 /O <${hash}> /U <${hash}> >> /ID [<00> <00>]`
}
