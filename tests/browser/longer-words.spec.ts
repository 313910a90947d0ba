import { common } from '@almanac/words/en/common'
import { jobKind } from '@almanac/words/en/job-kind'
import { jobState } from '@almanac/words/en/job-state'
import { today } from '@almanac/words/en/today'
import { visit } from '@almanac/words/en/visit'
import { expect, type Page, test } from '@playwright/test'
import { expectToFit } from '../support/fits.ts'
import { longerMessage, withLongerWords } from '../support/longer-words.ts'
import { signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { answerAll } from '../support/walk-visit.ts'

// The pages' own words are changed on their way: a page that the browser keeps would not be.
test.use({ serviceWorkers: 'block' })

// Other languages run longer than English, Spanish by a quarter: every message of the tablet is made 30 % longer, its values left alone.
test('no screen of the tablet breaks with texts 30 % longer', async ({ page }) => {
  test.setTimeout(500_000)
  await signIn(page, 'technician')
  await lengthen(page)
  await page.goto('/today')
  await expect(page.locator('header strong')).toHaveText(longerMessage(today.title))
  await expectToFit(page, 'today')
  await page.getByRole('button', { name: longerMessage(common.menu) }).click()
  await expect(page.getByRole('navigation')).toBeVisible()
  await expectToFit(page, 'menu')

  await page.goto('/today')
  await page
    .locator('main li a')
    .filter({ hasText: longerMessage(jobKind.rebed) })
    .filter({ hasNotText: longerMessage(jobState.closed) })
    .last()
    .click()
  await expect(page).toHaveURL(/visits/)
  const start = page.getByRole('button', { name: new RegExp(`^(${longerMessage(visit.start)}|${longerMessage(visit.resume)})$`) })
  await expect(start).toBeVisible()
  await expectToFit(page, 'brief with kit and drawing')
  await page.locator('main button[aria-haspopup=dialog]').first().click()
  await expect(page.getByRole('dialog')).toBeVisible()
  await expectToFit(page, 'why of a kit line')
  await page.keyboard.press('Escape')
  await startVisit(page, new RegExp(`^(${longerMessage(visit.start)}|${longerMessage(visit.resume)})$`), longerMessage(visit.nextStep))

  const head = page.getByRole('heading', { level: 1 })
  const next = page.getByRole('button', { name: new RegExp(`^(${longerMessage(visit.nextStep)}|${longerMessage(visit.toCloseOut)})$`) })
  const outcomes = page.locator('main input[name=outcome]')
  await expect(next).toBeVisible()
  for (let step = 0; step < 40 && (await outcomes.count()) === 0; step++) {
    const before = (await head.textContent()) ?? ''
    // Pressed without an answer, each question says what it wants.
    await next.click()
    for (let tries = 0; tries < 4 && (await head.textContent()) === before; tries++) {
      if (tries === 0) await expectToFit(page, `step ${step + 1}`)
      await answerAll(page, tries)
      await next.click()
    }
    await expect(head).not.toHaveText(before)
    if ((await outcomes.count()) === 0) await expectToFit(page, `step ${step + 2}`)
  }
  expect(await outcomes.count()).toBeGreaterThan(3)
  for (const outcome of await outcomes.all()) {
    await outcome.check()
    await page.locator('main .sticky button').last().click()
    await expectToFit(page, `close-out ${await outcome.getAttribute('value')}`)
  }
})

/** Each page comes with longer messages. What the server drew is drawn anew by the page's own words. */
async function lengthen(page: Page): Promise<void> {
  await page.route(/\/(today|visits\/[^/?]+)$/, async (route) => {
    if (route.request().resourceType() !== 'document') return route.fallback()
    const answer = await route.fetch()
    await route.fulfill({ response: answer, body: withLongerWords(await answer.text()) })
  })
}
