import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { firstJourney } from './hosts.ts'

/** More stops than any page has. */
const mostStops = 120

/** Goes on with the Tab key until something has the keyboard. */
async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor()
  for (let stop = 0; stop < mostStops; stop++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`The Tab key does not reach ${wanted}`)
}

async function pressOn(page: Page, wanted: Locator): Promise<void> {
  await tabTo(page, wanted)
  await page.keyboard.press('Enter')
}

firstJourney(
  'a room with door, window and a finding, from the empty book to its sheet, by keys alone',
  async ({ page }) => {
    const button = (name: string | RegExp) => page.getByRole('button', { name })
    await pressOn(page, button('Start a house'))
    await tabTo(page, page.getByLabel('New job'))
    await page.keyboard.type('By keys')
    await page.keyboard.press('Enter')
    await pressOn(page, button('Sketch the house'))

    await tabTo(page, page.getByLabel('A room by its size'))
    await page.keyboard.type('12-6 x 10')
    await page.keyboard.press('Enter')
    // The name of the new room has the keyboard, its text picked: typing replaces it.
    await page.getByRole('textbox', { name: 'Name' }).and(page.locator(':focus')).waitFor()
    await page.keyboard.type('Study')
    await page.keyboard.press('Enter')
    await page.getByRole('tablist', { name: 'Study' }).waitFor()
    // 12 ft 6 in x 10 ft.
    expect((await page.getByTestId('room-figures').locator('td').allInnerTexts())[1]).toBe('125.0 sq ft')

    await pressOn(page, button('Set it'))
    await button('Undo: set a door').waitFor()
    await pressOn(page, page.getByRole('button', { name: 'Study', exact: true }))
    await tabTo(page, page.getByLabel('In wall'))
    for (const key of ['ArrowDown', 'ArrowDown', 'Enter']) await page.keyboard.press(key)
    await tabTo(page, page.getByLabel('set a'))
    await page.keyboard.type('window')
    await pressOn(page, button('Set it'))
    await button('Undo: set a window').waitFor()

    await page.keyboard.press('Alt+2')
    await page.keyboard.press('n')
    await page.keyboard.press('1')
    await button(/^Undo: Record/).waitFor()

    await page.keyboard.press('Alt+7')
    await page.frameLocator('iframe').first().getByRole('heading', { name: /Study/ }).first().waitFor()
  },
)
