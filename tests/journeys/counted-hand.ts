import type { Locator, Page } from 'playwright-core'
import { nothingDone, type Tally } from './keystroke-level.ts'
import { handOver, type Place } from './sheet-pointer.ts'

/** A hand that counts everything it sends to the program; nothing else may be sent while it counts. */
export function countedHand(page: Page) {
  let tally: Tally = nothingDone
  let isOnMouse = true
  const sheet = handOver(page)

  function count(device: 'mouse' | 'keyboard', what: Partial<Tally>): void {
    const homes = isOnMouse === (device === 'mouse') ? 0 : 1
    isOnMouse = device === 'mouse'
    const sum = (name: keyof Tally) => tally[name] + (what[name] ?? 0)
    tally = {
      inputs: sum('inputs'),
      typed: sum('typed'),
      keys: sum('keys'),
      points: sum('points'),
      homes: tally.homes + homes,
      thinks: sum('thinks'),
    }
  }

  async function press(key: string, thinks: number): Promise<void> {
    count('keyboard', { inputs: 1, keys: key.split('+').length, thinks })
    await page.keyboard.press(key)
  }

  return {
    tally: () => tally,
    click: async (target: Locator) => {
      count('mouse', { inputs: 1, points: 1, keys: 1, thinks: 1 })
      await target.click()
    },
    clickAt: async (place: Place) => {
      count('mouse', { inputs: 1, points: 1, keys: 1, thinks: 1 })
      await sheet.click(place)
    },
    /** Points in a direction for a length that is typed next. */
    aim: async (place: Place) => {
      count('mouse', { inputs: 1, points: 1, thinks: 1 })
      await sheet.move(place)
    },
    /** A length while a room is drawn, which is no field. */
    length: async (text: string) => {
      count('keyboard', { typed: text.length })
      await page.keyboard.type(text)
    },
    /** A key that is a command. */
    press: (key: string) => press(key, 1),
    /** A key that only ends what was typed or goes on to the next field. */
    end: (key: 'Enter' | 'Tab') => press(key, 0),
    /** Text into the field that has the keyboard. */
    write: async (text: string) => {
      const facts = text.split(/[,\n]/).length
      count('keyboard', { typed: text.length, thinks: facts })
      // All at once, so that the test is quick; each sign is counted as a key.
      await page.keyboard.insertText(text)
    },
  }
}
