import type { CDPSession, Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

type Finger = readonly [number, number]

async function touch(
  hand: CDPSession,
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  fingers: readonly Finger[],
) {
  const touchPoints = fingers.map(([x, y], id) => ({ x, y, id }))
  await hand.send('Input.dispatchTouchEvent', { type, touchPoints })
}

async function viewOf(page: Page): Promise<{ readonly scale: number; readonly left: number }> {
  const { scale = '', originX = '' } = await page
    .getByTestId('sheet')
    .evaluate((sheet) => ({ ...sheet.dataset }))
  return { scale: Number(scale), left: Number(originX) }
}

browserJourney(
  'fingers shift and zoom the sheet, tap a room and a finding, and move no wall',
  async (program) => {
    const browser = program.page.context().browser()
    if (browser === null) throw new Error('The page has no browser')
    const context = await browser.newContext({ hasTouch: true, viewport: { width: 1024, height: 768 } })
    const page = await context.newPage()
    await page.goto(await program.nextAddress())
    await page.getByTestId('house-figures').waitFor()
    const hand = await context.newCDPSession(page)
    const box = await page.getByTestId('sheet').boundingBox()
    if (box === null) throw new Error('The sheet is not shown')
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    const before = await viewOf(page)

    // A stroke from the middle of the house crosses walls; it only shifts the sheet.
    await touch(hand, 'touchStart', [[x, y]])
    for (const step of [20, 40, 60]) await touch(hand, 'touchMove', [[x + step, y]])
    await touch(hand, 'touchEnd', [])
    await expect.poll(async () => (await viewOf(page)).left - before.left).toBeGreaterThan(30)
    const shifted = await viewOf(page)
    expect(shifted.scale).toBe(before.scale)

    await touch(hand, 'touchStart', [[x - 40, y]])
    await touch(hand, 'touchStart', [
      [x - 40, y],
      [x + 40, y],
    ])
    for (const step of [60, 80])
      await touch(hand, 'touchMove', [
        [x - step, y],
        [x + step, y],
      ])
    await touch(hand, 'touchEnd', [])
    await expect.poll(async () => (await viewOf(page)).scale / before.scale).toBeCloseTo(2, 1)
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true)

    // A room that shares doors is moved by presses, and what is asked then can be pressed too.
    await page.getByRole('button', { name: 'Dining room', exact: true }).tap()
    await page.getByLabel('Move it by').fill("20'")
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Move the room left' }).tap()
    const own = page.getByRole('button', { name: 'Give each room its own openings' })
    expect((await own.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    await own.tap()
    await page.getByRole('button', { name: 'Undo: move rooms' }).tap()
    await own.waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Redo: move rooms' }).waitFor()

    const stations = page.getByRole('navigation', { name: 'Stations' })
    await stations.getByRole('button', { name: /^Walk/ }).tap()
    await page.getByRole('button', { name: /^Next room/ }).tap()
    const usual = page.locator('.usual-finding').first()
    expect((await usual.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    await usual.tap()
    await page.getByRole('button', { name: /^Undo: Record/ }).waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true)
    await context.close()
  },
)
