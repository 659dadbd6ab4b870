import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'
import { handOver } from './sheet-pointer.ts'
import { twelveRooms } from './twelve-rooms.ts'

/** Clicks and keys that are no text. */
function inputsOf(page: Page) {
  let inputs = 0
  return {
    count: () => inputs,
    click: async (name: string) => {
      inputs++
      await page.getByRole('button', { name, exact: true }).click()
    },
    press: async (key: string) => {
      inputs++
      await page.keyboard.press(key)
    },
  }
}

async function startJob(page: Page, title: string): Promise<void> {
  await page.getByTestId('house-figures').waitFor()
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill(title)
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByRole('button', { name: 'Sketch the house' }).click()
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
}

browserJourney('twelve rooms by a list, from an empty sheet', async ({ page }) => {
  await page.setViewportSize({ width: 1366, height: 768 })
  await startJob(page, 'By list')
  const hand = inputsOf(page)
  const list = page.getByRole('dialog', { name: 'List of rooms' })
  const field = page.getByLabel('One room a line')

  await hand.click('Write a list of rooms')
  await field.fill('Dining 14 x 14 x 9, 3 win\nHall 4 by\nDen 12/6 x 10')
  await list.getByText('3 windows, baseboard').waitFor()
  expect(await list.getByText(/^No size is understood/).count()).toBe(2)
  await list.getByText('2 lines have to be fixed first').waitFor()

  // Escape closes the list and loses nothing of it.
  await page.keyboard.press('Escape')
  await list.waitFor({ state: 'hidden' })
  await page.getByRole('button', { name: 'List of rooms', exact: true }).click()
  expect(await field.inputValue()).toContain('Den 12/6 x 10')

  await field.fill(twelveRooms)
  await page.getByRole('button', { name: 'Make these 12 rooms' }).waitFor()
  expect(await list.getByText(/is taken as the name/).count()).toBe(1)
  await hand.press('Control+Enter')
  await list.waitFor({ state: 'hidden' })
  await page.locator('[data-stored="stored"]').waitFor()
  expect(hand.count()).toBe(2)

  // Floors: 4x18, 15.5x13, 14x14, 12.5x11, 6x7, 5x8; 7x15, 12.5x12, 2.5x6, 11x12, 10.5x10, 6x8.
  const ground = 4 * 18 + 15.5 * 13 + 14 * 14 + 12.5 * 11 + 6 * 7 + 5 * 8
  const upper = 7 * 15 + 12.5 * 12 + 2.5 * 6 + 11 * 12 + 10.5 * 10 + 6 * 8
  const [, ceilings] = await page.getByTestId('house-figures').locator('td').allInnerTexts()
  expect(ceilings).toBe(`${(ground + upper).toFixed(1)} sq ft`)

  // One action: one undo takes all of it back, and the list is empty.
  await page.keyboard.press('Control+z')
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
  await page.getByRole('button', { name: 'Redo: make 12 rooms' }).waitFor()
  await page.keyboard.press('l')
  expect(await field.inputValue()).toBe('')
})

browserJourney('a drawn room is named at once, and given what is usual in one go', async ({ page }) => {
  await startJob(page, 'One bath')
  const inspector = page.getByRole('complementary', { name: 'What is selected' })
  await page.keyboard.press('r')
  await handOver(page).drag([1, 1], [9, 7])
  // The name has the keyboard, and says what the room is used as.
  await page.getByRole('textbox', { name: 'Name' }).and(page.locator(':focus')).waitFor()
  await page.keyboard.type('Hall bath')
  await page.keyboard.press('Enter')
  await inspector.getByText(/Usual in a room like this \(bath\): 1 door, 1 window/).waitFor()
  await inspector.getByRole('button', { name: 'Set these' }).click()
  // 2 * (8 + 6) * 8 of walls less a door 2 ft 8 in x 6 ft 8 in and a window 2 ft 6 in x 4 ft 6 in.
  const net = 2 * (8 + 6) * 8 - (32 * 80) / 144 - 2.5 * 4.5
  expect((await page.getByTestId('room-figures').locator('td').allInnerTexts())[0]).toBe(
    `${net.toFixed(1)} sq ft`,
  )
  // One key sets the last opening, a window, once more.
  await page.getByRole('button', { name: 'Hall bath', exact: true }).focus()
  await page.keyboard.press('a')
  expect((await page.getByTestId('house-figures').locator('td').allInnerTexts())[0]).toBe(
    `${(net - 2.5 * 4.5).toFixed(1)} sq ft`,
  )
})
