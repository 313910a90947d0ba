import { expect, type Locator, type Page } from '@playwright/test'
import { searchField } from './head-search.ts'

/** A hand that gets somewhere: each call is one press. Tab and typing are none, as moving a mouse is none. */
export type Hand = { presses: number; press: (target: Locator) => Promise<void>; find: (words: string, wanted: Locator) => Promise<void> }

const MOST_TABS = 150

export function mouse(page: Page): Hand {
  const hand: Hand = {
    presses: 0,
    press: async (target) => {
      await target.click()
      hand.presses++
    },
    find: async (words, wanted) => {
      const lens = page.getByRole('button', { name: 'Search', exact: true })
      await hand.press((await lens.isVisible()) ? lens : searchField(page))
      await searchField(page).pressSequentially(words, { delay: 15 })
      await hand.press(wanted)
    },
  }
  return hand
}

export function keyboard(page: Page): Hand {
  const hand: Hand = {
    presses: 0,
    press: async (target) => {
      await expect(target).toBeVisible()
      for (let tabs = 0; !(await target.evaluate((element) => element === document.activeElement)); tabs++) {
        if (tabs === MOST_TABS) throw new Error(`not reached by ${MOST_TABS} Tabs`)
        await page.keyboard.press('Tab')
      }
      await page.keyboard.press('Enter')
      hand.presses++
    },
    find: async (words, wanted) => {
      await page.keyboard.press('/')
      await expect(searchField(page)).toBeFocused()
      await page.keyboard.type(words)
      await expect(wanted).toBeVisible()
      for (let downs = 0; downs < 12 && (await wanted.getAttribute('aria-selected')) !== 'true'; downs++)
        await page.keyboard.press('ArrowDown')
      await page.keyboard.press('Enter')
      hand.presses += 2
    },
  }
  return hand
}
