import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

browserJourney(
  'the page is used by keys alone, at 200 % and in a low window, and says what a move on the sheet changed',
  async ({ page }) => {
    const goTo = (station: string) =>
      page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
    const news = page.getByTestId('sketch-news')
    const sheet = page.getByTestId('sheet')

    await sheet.focus()
    await page.keyboard.press('N')
    await expect.poll(() => news.textContent()).toMatch(/^.+ picked, .+ by .+ sq ft\.$/)
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => news.textContent()).toMatch(/ moved .+ right\./)

    await page.setViewportSize({ width: 1366, height: 625 })
    await expect.poll(async () => (await heightOf(page)) / 625).toBeGreaterThanOrEqual(0.55)

    await goTo('Site')
    await page.getByRole('option').first().click()
    const passes = page.getByRole('list', { name: 'Passes' })
    await passes.getByRole('button').nth(3).waitFor()
    expect(await tabStops(page, '[aria-label="Passes"]')).toBe(1)
    await passes.locator('button[tabindex="0"]').focus()
    const first = await focusedName(page)
    await page.keyboard.press('ArrowDown')
    expect(await focusedName(page)).not.toBe(first)
    await page.keyboard.press('Home')
    await page.keyboard.press('ArrowRight')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-expanded'))).not.toBe(null)

    await page.setViewportSize({ width: 683, height: 384 })
    for (const station of ['House', 'Walk', 'Finish', 'Figures', 'Calendar', 'Site', 'Paper']) {
      await goTo(station)
      expect(await widthOver(page), `${station} is wider than the window by`).toBe(0)
    }
    await goTo('House')
    await expect.poll(() => heightOf(page)).toBeGreaterThanOrEqual(300)
  },
)

async function heightOf(page: Page): Promise<number> {
  return (await page.getByTestId('sheet').boundingBox())?.height ?? 0
}

function widthOver(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
}

function tabStops(page: Page, within: string): Promise<number> {
  return page
    .locator(`${within} button`)
    .evaluateAll(
      (buttons) => buttons.filter((button) => button instanceof HTMLElement && button.tabIndex === 0).length,
    )
}

function focusedName(page: Page): Promise<string | null | undefined> {
  return page.evaluate(
    () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent,
  )
}
