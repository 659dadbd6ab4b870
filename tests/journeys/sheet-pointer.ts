import type { Page } from 'playwright-core'
import { unitsPerFoot } from '../../core/units/length.ts'

/** A place on the sheet in feet from the plan's origin, x right, y down. */
export type Place = readonly [x: number, y: number]

/** A hand with a mouse over the sheet of the House station. */
export function handOver(page: Page) {
  const sheet = page.getByTestId('sheet')

  async function pixelOf([x, y]: Place): Promise<readonly [number, number]> {
    const box = await sheet.boundingBox()
    if (box === null) throw new Error('the sheet is not shown')
    const view = await sheet.evaluate((element: HTMLElement) => ({
      scale: Number(element.dataset.scale),
      x: Number(element.dataset.originX),
      y: Number(element.dataset.originY),
    }))
    const scale = view.scale * unitsPerFoot
    return [box.x + view.x + x * scale, box.y + view.y + y * scale]
  }

  async function move(to: Place): Promise<void> {
    await page.mouse.move(...(await pixelOf(to)), { steps: 5 })
  }

  async function click(at: Place): Promise<void> {
    await move(at)
    await page.mouse.down()
    await page.mouse.up()
  }

  async function drag(from: Place, to: Place, beforeLettingGo?: () => Promise<void>): Promise<void> {
    await move(from)
    await page.mouse.down()
    await move(to)
    await beforeLettingGo?.()
    await page.mouse.up()
  }

  return { move, click, drag, pixelOf }
}
