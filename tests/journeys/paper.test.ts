import { readFileSync } from 'node:fs'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

browserJourney(
  'what is printed is chosen, counted before, remembered, and put on a phone',
  async (program) => {
    const { page } = program
    await page.setViewportSize({ width: 1366, height: 768 })
    await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: 'Paper' }).click()
    await page.getByText('All for the crew').click({ timeout: 120_000 })
    const count = page.getByText(/sheets? of paper$/)
    await count.waitFor({ timeout: 60_000 })
    const pages = page.frameLocator('iframe').locator('.sheet')
    const all = await pages.count()
    expect(all).toBeGreaterThan(20)
    // Nobody accepted a plan.
    await page.getByText('DRAFT is printed across').waitFor()

    await page.getByText('Which pages: all').click()
    await page.getByText('Room sheets', { exact: true }).click()
    await page.getByText('Which pages: 3 of 4').waitFor()
    await count.waitFor()
    expect(await pages.count()).toBeLessThan(all - 10)
    const chosen = await pages.count()

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save for a phone' }).click(),
    ])
    expect(download.suggestedFilename()).toMatch(/^pocket-[a-z0-9-]+\.html$/)
    expect(readFileSync(await download.path(), 'utf8')).toContain('Check marks stay on this phone only')

    await page.reload()
    await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: 'Paper' }).click()
    await page.getByText('Which pages: 3 of 4').waitFor({ timeout: 120_000 })
    await count.waitFor({ timeout: 60_000 })
    expect(await pages.count()).toBe(chosen)
  },
)
