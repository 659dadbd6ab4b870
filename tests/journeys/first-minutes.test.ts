import { expect } from 'vitest'
import { firstJourney } from './hosts.ts'

firstJourney('an empty book says how to begin, and every empty station what to do next', async (program) => {
  const { page } = program
  await page.setViewportSize({ width: 1366, height: 768 })
  const begin = page.getByRole('region', { name: 'Begin' })
  await begin.getByRole('button', { name: 'Open a file' }).waitFor()

  await begin.getByRole('button', { name: 'Start a house' }).click()
  await page.keyboard.type('Elm Street')
  await page.keyboard.press('Enter')
  const sheet = page.getByRole('dialog')
  await sheet.waitFor()
  await page.keyboard.press('Escape')
  await sheet.waitFor({ state: 'detached' })
  await page.getByRole('button', { name: 'Write a list of rooms' }).waitFor()
  for (const station of [2, 3, 4, 5, 6, 7]) {
    await page.keyboard.press(`Alt+${station}`)
    await page.getByRole('button', { name: 'Draw the first room' }).click()
    await page.getByTestId('house-figures').waitFor()
  }

  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByRole('button', { name: 'Open a fresh demonstration house' }).click()
  const note = page.getByRole('complementary', { name: 'About this example' })
  await note.getByText('This is an example.').waitFor()
  await note.getByRole('button', { name: 'Hide this note' }).click()
  await note.waitFor({ state: 'detached' })
  await page.reload()
  await page.getByTestId('house-figures').waitFor()
  expect(await note.count()).toBe(0)
})
