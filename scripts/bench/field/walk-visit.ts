import { expect, type Page } from '@playwright/test'
import { answerAll } from '../../../tests/support/walk-visit.ts'
import { type Found, lookAt } from './look-at-page.ts'

export const NEXT = /^(Next step|Close out)$/
const MOST_STEPS = 45

/** Opens what is a touch away at each step, one after the other. */
async function lookAtPanels(page: Page, kind: string, found: Found): Promise<void> {
  const names = await page.getByRole('navigation', { name: 'This visit' }).getByRole('button').allTextContents()
  for (const name of new Set(names)) {
    await page.getByRole('navigation', { name: 'This visit' }).getByRole('button', { name, exact: true }).first().click()
    const dialog = page.getByRole('dialog')
    await dialog.waitFor()
    // What comes in a late piece is looked at once it is there.
    await expect(dialog.locator('output.animate-pulse')).toHaveCount(0)
    await lookAt(page, `${kind}, ${name}`, found)
    await page.keyboard.press('Escape')
  }
}

/** Walks a visit that was started from its first step to its closing form, looking at each step before and after it is answered; resolves to the seconds that each "Next step" took. */
export async function walk(page: Page, kind: string, found: Found): Promise<number[]> {
  const took: number[] = []
  const heading = page.getByRole('heading', { level: 1 })
  const next = page.getByRole('button', { name: NEXT })
  await next.waitFor()
  await lookAtPanels(page, kind, found)
  for (let step = 0; step < MOST_STEPS; step++) {
    const title = (await heading.textContent()) ?? ''
    const place = `${kind}, ${title}`
    await lookAt(page, place, found)
    if (title === 'How did the visit end?') return took
    // A number that cannot be here is asked back: another one.
    for (let tried = 0; tried < 3; tried++) {
      await answerAll(page, tried)
      const begun = performance.now()
      await next.click()
      const gone = await expect(heading)
        .not.toHaveText(title, { timeout: 5000 })
        .then(
          () => true,
          () => false,
        )
      if (gone) {
        took.push((performance.now() - begun) / 1000)
        break
      }
      await lookAt(page, place, found)
    }
  }
  throw new Error(`${kind}: the steps do not end`)
}
