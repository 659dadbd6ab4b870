import type { Page } from 'playwright-core'
import { feet } from '../../core/units/length.ts'

/** A hand over the sheet that knows places in feet of plan. */
export function planHand(page: Page) {
  async function onScreen(xFeet: number, yFeet: number): Promise<{ x: number; y: number }> {
    const sheet = page.getByTestId('sheet')
    const box = await sheet.boundingBox()
    if (box === null) throw new Error('there is no sheet to draw on')
    const [scale, x, y] = await Promise.all(
      ['data-scale', 'data-origin-x', 'data-origin-y'].map(async (name) =>
        Number(await sheet.getAttribute(name)),
      ),
    )
    return {
      x: box.x + (x ?? 0) + feet(xFeet) * (scale ?? 0),
      y: box.y + (y ?? 0) + feet(yFeet) * (scale ?? 0),
    }
  }

  async function moveTo(xFeet: number, yFeet: number): Promise<void> {
    const place = await onScreen(xFeet, yFeet)
    await page.mouse.move(place.x, place.y, { steps: 4 })
  }

  return {
    take: (tool: string) =>
      page
        .getByRole('toolbar', { name: 'Drawing tools' })
        .getByRole('button', { name: tool, exact: true })
        .click(),
    async drag(from: readonly [number, number], to: readonly [number, number]): Promise<void> {
      await moveTo(...from)
      await page.mouse.down()
      await moveTo(...to)
      await page.mouse.up()
    },
    async click(xFeet: number, yFeet: number): Promise<void> {
      await moveTo(xFeet, yFeet)
      await page.mouse.down()
      await page.mouse.up()
    },
    moveTo,
  }
}

/** Waits until the book has every edit. */
export async function stored(page: Page): Promise<void> {
  await page.locator('[data-stored="stored"]').waitFor()
}

/** An empty job on an empty sheet, in feet and inches. */
export async function startJob(page: Page, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill(title)
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByText(title).first().waitFor()
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
}
