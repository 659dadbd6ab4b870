import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { journey } from './hosts.ts'
import { planHand, startJob, stored } from './plan-hand.ts'

async function figures(page: Page, row: 'room' | 'house'): Promise<readonly string[]> {
  return page.getByTestId(`${row}-figures`).locator('td').allInnerTexts()
}

async function choose(page: Page, room: string): Promise<void> {
  await page
    .getByRole('complementary', { name: 'Storeys and rooms' })
    .getByRole('button', { name: room, exact: true })
    .click()
}

journey(
  'two rooms with a shared door and three windows are drawn by hand, undone, done again and kept',
  async (program) => {
    const hand = planHand(program.page)
    await startJob(program.page, 'Two rooms')

    await hand.take('Square room')
    await hand.drag([2, 2], [14, 12])
    // 12' x 10' x 8' high: walls 2 x (12 + 10) x 8 = 352 less the 5 1/2" baseboard on them, ceiling 12 x 10 = 120.
    expect((await figures(program.page, 'room'))[1]).toBe('120.0 sq ft')
    await hand.click(14.375, 2)
    await program.page.keyboard.type(`12' x 10'`)
    await program.page.keyboard.press('Enter')
    expect((await figures(program.page, 'house'))[1]).toBe('240.0 sq ft')
    const bare = await figures(program.page, 'house')

    await hand.take('Door')
    await hand.click(14, 7)
    await program.page.getByText('one opening, counted once').waitFor()
    await hand.take('Window')
    await hand.click(8, 2)
    await hand.click(20, 2)
    await hand.click(20, 12)
    expect((await figures(program.page, 'house'))[3]).not.toBe('0.0 sq ft')
    const furnished = await figures(program.page, 'house')
    expect(furnished[0]).not.toBe(bare[0])

    for (let times = 0; times < 4; times++) await program.page.keyboard.press('Control+z')
    expect(await figures(program.page, 'house')).toEqual(bare)
    for (let times = 0; times < 4; times++) await program.page.keyboard.press('Control+Shift+z')
    expect(await figures(program.page, 'house')).toEqual(furnished)

    await hand.take('Window')
    await hand.click(8.5, 2)
    const refusal = program.page.locator('.refusal')
    await refusal.waitFor()
    expect(await refusal.textContent()).toMatch(/overlap/i)
    expect(await figures(program.page, 'house')).toEqual(furnished)
    await program.page.keyboard.press('Escape')

    await stored(program.page)
    await program.restart()
    await program.page.getByTestId('house-figures').waitFor()
    expect(await figures(program.page, 'house')).toEqual(furnished)
    await choose(program.page, 'Room 1')
    expect((await figures(program.page, 'room'))[1]).toBe('120.0 sq ft')
  },
)

journey('a wall takes an exact length, typed where it is written', async ({ page }) => {
  const hand = planHand(page)
  await startJob(page, 'Exact')
  await hand.take('Square room')
  await hand.drag([2, 2], [14, 12])
  const field = page.getByLabel(/Exact length of wall A/)
  await field.fill(`12' 6 1/2"`)
  await field.press('Enter')
  expect(await field.inputValue()).toBe(`12' 6 1/2"`)
  // 12.541666 x 10 = 125.4
  expect((await figures(page, 'room'))[1]).toBe('125.4 sq ft')
  await field.fill('12 feets')
  await page.getByText(/is not a length/).waitFor()
  await field.press('Escape')
  expect((await figures(page, 'room'))[1]).toBe('125.4 sq ft')
})
