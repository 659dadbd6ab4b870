import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney, journey } from './hosts.ts'
import { handOver } from './sheet-pointer.ts'

/** Walls, ceiling, trim length, sash wood and the length round the glass, as they stand under the sheet. */
async function figures(page: Page, row: 'room-figures' | 'house-figures'): Promise<readonly string[]> {
  return page.getByTestId(row).locator('td').allInnerTexts()
}

async function startJob(page: Page, title: string): Promise<void> {
  await page.getByTestId('house-figures').waitFor()
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill(title)
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByRole('button', { name: 'Sketch the house' }).click()
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
}

function inspectorOf(page: Page) {
  return page.getByRole('complementary', { name: 'What is selected' })
}

/** As the strip writes an area. */
function squareFeet(area: number): string {
  return `${area.toFixed(1)} sq ft`
}

/** Walls of both rooms, 8 ft high, less both faces of a door 2 ft 8 in x 6 ft 8 in and some windows 2 ft 6 in x 4 ft 6 in. */
function netWalls(windows: number): string {
  return squareFeet(2 * (12 + 10) * 8 + 2 * (14 + 10) * 8 - (2 * 32 * 80) / 144 - windows * 2.5 * 4.5)
}

async function stored(page: Page): Promise<void> {
  await page.locator('[data-stored="stored"]').waitFor()
}

journey('two rooms with a shared door and three windows, drawn by mouse', async (program) => {
  let { page } = program
  let hand = handOver(page)
  await startJob(page, 'Two rooms')

  await page.keyboard.press('r')
  await hand.drag([1, 1], [13, 11], async () => {
    // While the button is still down the figures are there already; nothing is recorded yet.
    expect((await figures(page, 'house-figures')).slice(0, 2)).toEqual(['352.0 sq ft', '120.0 sq ft'])
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
  })
  // 12 ft x 10 ft, 8 ft high: 2 * (12 + 10) * 8 and 12 * 10.
  expect((await figures(page, 'room-figures')).slice(0, 2)).toEqual(['352.0 sq ft', '120.0 sq ft'])

  // The next room catches on a partition's thickness from the first one, and its size is typed.
  await hand.click([13.375, 1])
  await hand.move([20, 8])
  await page.keyboard.type("14' x 10'")
  await page.keyboard.press('Enter')
  // 2 * (14 + 10) * 8 and 14 * 10.
  expect((await figures(page, 'room-figures')).slice(0, 2)).toEqual(['384.0 sq ft', '140.0 sq ft'])

  // The name of the new room has the keyboard until it is taken.
  await page.keyboard.press('Enter')
  await page.keyboard.press('d')
  await hand.click([13.05, 6])
  await inspectorOf(page).getByText('Room 1 and Room 2: one opening, counted once').waitFor()
  expect((await figures(page, 'house-figures'))[0]).toBe(netWalls(0))

  await page.keyboard.press('w')
  await hand.click([4, 1])
  await hand.click([10, 1])
  await hand.click([20, 1])
  const [walls, ceiling, , sash] = await figures(page, 'house-figures')
  expect(walls).toBe(netWalls(3))
  expect(ceiling).toBe('260.0 sq ft')
  expect(sash).not.toBe('0.0 sq ft')

  // A fourth window that would overlap is refused in words at the place, and nothing is drawn.
  await hand.click([10.9, 1])
  await page
    .getByText(/Window 2.*overlap/)
    .first()
    .waitFor()
  expect((await figures(page, 'house-figures'))[0]).toBe(walls)
  await page.keyboard.press('Escape')

  // A corner dragged across the opposite wall is refused, and the room stays as it was.
  await hand.click([6, 6])
  await hand.drag([1, 1], [6, 14])
  await page
    .getByText(/Room 1: .*cross/)
    .first()
    .waitFor()
  expect((await figures(page, 'house-figures'))[0]).toBe(walls)

  await page.keyboard.press('Control+z')
  await page.getByRole('button', { name: 'Redo: set a window' }).waitFor()
  expect((await figures(page, 'house-figures'))[0]).toBe(netWalls(2))
  await page.keyboard.press('Control+Shift+z')
  const all = await figures(page, 'house-figures')
  expect(all[0]).toBe(walls)

  await stored(page)
  await program.restart()
  page = program.page
  hand = handOver(page)
  await page.getByText('Two rooms', { exact: true }).waitFor()
  await page.getByTestId('house-figures').waitFor()
  expect(await figures(page, 'house-figures')).toEqual(all)
  await hand.click([6, 6])
  await inspectorOf(page).getByRole('textbox', { name: 'Name' }).waitFor()
  for (const name of ['Door 1', 'Window 1', 'Window 2']) {
    await page.getByRole('button', { name: new RegExp(`^${name}`) }).waitFor()
  }
})

browserJourney('a wall takes the exact length written over it, one action for one undo', async ({ page }) => {
  const hand = handOver(page)
  await startJob(page, 'Exact')
  await page.keyboard.press('r')
  await hand.drag([1, 1], [13, 11])
  // The name of the new room takes the keyboard; Enter leaves it.
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT')
  await page.keyboard.press('Enter')
  await page.keyboard.press('v')
  const [x, y] = await hand.pixelOf([7, 1])
  await page.mouse.click(x, y + 10)
  await page.getByLabel('Exact length of the wall').fill(`12' 6 1/2"`)
  await page.keyboard.press('Enter')
  // 12 ft 6 1/2 in x 10 ft, to a tenth of a square foot.
  expect((await figures(page, 'room-figures'))[1]).toBe(squareFeet((150.5 * 120) / 144))
  await page.keyboard.press('Control+z')
  expect((await figures(page, 'room-figures'))[1]).toBe('120.0 sq ft')
})

browserJourney('a room and its door by keyboard alone', async ({ page }) => {
  await startJob(page, 'By keys')
  await page.getByLabel('A room by its size').focus()
  await page.keyboard.type("12' x 10'")
  await page.keyboard.press('Enter')
  await page.getByRole('textbox', { name: 'Name' }).and(page.locator(':focus')).waitFor()
  // 2 * (12 + 10) * 8.
  expect((await figures(page, 'room-figures'))[0]).toBe(squareFeet(352))
  await page.getByRole('button', { name: 'Set it' }).focus()
  await page.keyboard.press('Enter')
  // A door 2 ft 8 in x 6 ft 8 in off one face.
  expect((await figures(page, 'room-figures'))[0]).toBe(squareFeet(352 - (32 * 80) / 144))
  await page.getByRole('button', { name: 'Room 1' }).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Delete')
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
  await page.keyboard.press('Control+z')
  expect((await figures(page, 'house-figures'))[0]).toBe(squareFeet(352 - (32 * 80) / 144))
})

browserJourney(
  'a room that shares a door gets its own, or takes the other room along, by mouse and by keys',
  async ({ page }) => {
    const hand = handOver(page)
    await startJob(page, 'Moved')
    await page.getByLabel('A room by its size').fill("12' x 10'")
    await page.keyboard.press('Enter')
    await page.getByRole('textbox', { name: 'Name' }).and(page.locator(':focus')).waitFor()
    await page.keyboard.press('Enter')
    // The next room backs on the first one, and a door joins them.
    for (const key of ['-', '-', '-', '-', 'r']) await page.keyboard.press(key)
    await hand.drag([12.375, 0], [24.375, 10])
    await page.getByRole('textbox', { name: 'Name' }).and(page.locator(':focus')).waitFor()
    await page.keyboard.press('Enter')
    await page.keyboard.press('d')
    await hand.click([12.05, 5])
    await inspectorOf(page).getByText('one opening, counted once').waitFor()
    await page.keyboard.press('v')
    const [walls] = await figures(page, 'house-figures')

    await hand.drag([18, 5], [18, 14])
    await page.getByText('Room 2 shares one door with Room 1. This move would pull it apart.').waitFor()
    const own = page.getByRole('button', { name: 'Give each room its own door' })
    await own.click()
    await page.getByRole('button', { name: 'Undo: move rooms' }).click()
    await page.getByRole('button', { name: 'Undo: set a door' }).waitFor()

    await page.getByRole('button', { name: 'Room 2', exact: true }).focus()
    await page.keyboard.press('Enter')
    for (let step = 0; step < 40 && !(await own.isVisible()); step++) await page.keyboard.press('ArrowDown')
    await own.and(page.locator(':focus')).waitFor()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await own.waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Undo: move rooms' }).waitFor()
    // The door is still one for both rooms.
    expect((await figures(page, 'house-figures'))[0]).toBe(walls)
  },
)
