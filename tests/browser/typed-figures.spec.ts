import { expect, test } from '@playwright/test'
import { figureLine, resetFigure } from '../support/firm-figures-page.ts'
import { signIn } from '../support/sign-in.ts'
import { saidOf } from '../support/typed-texts.ts'

/**
 * The firm's figures with a number: which field, what it says of a slip (a number must stand there unless said otherwise), a number that the server knows to be none,
 * one that is meant, and how its line shows it afterwards.
 */
const FIGURES: readonly [figure: string, field: string, far: [text: string, says: RegExp] | null, meant: string, shown: RegExp][] = [
  ['Iron allowance', 'Added for each mg/L', ['99999', /99999 is outside 0 to 20/], '1 1/2', /1\.5 gpg per mg\/L/],
  ['Manganese allowance', 'Added for each mg/L', ['1,200', /1200 is outside 0 to 20/], '1,5', /1\.5 gpg per mg\/L/],
  ['Use gravel from this volume', 'From this resin volume', null, '1½', /1½ ft³/],
  ['Reserve capacity', 'How much', ['1 200', /1200 is outside 0 to 7/], '1.5', /1\.5 days’ use/],
  ['Backwash flow', 'Lowest', ['99999', /99999 is outside 0\.5 to 30/], '1 1/2', /5 gpm\/ft² \(1\.5 gpm\/ft² to 8/],
  ['Backwash expansion', 'Expansion wanted', ['1 1/2', /0\.015 is outside 0\.1 to 1\.5/], '50', /50%/],
  ['Bags in stock', 'Bag sizes', ['99999', /can’t be right|the most is/], '1 1/2; 0,5', /1½ ft³, ½ ft³/],
  ['10 × 54 in tank', 'Usual resin', ['99999', /can’t be right|the most is/], '1 1/2', /1½ ft³ of resin/],
  ['Metered house valve', 'Refill flow', ['99999', /can’t be right|the most is/], '1 1/2', /refill 1\.5 gpm/],
  ['Price of salt', 'Price for a 40 lb bag', ['99999', /the most is/], '1,200', /\$1,200\.00 for a 40 lb bag/],
  ['Price of water', 'Price for 1,000 gallons', null, '1\u00a0200', /\$1,200\.00 for 1,000 gallons/],
]

test.describe.configure({ timeout: 120_000 })

test('your company’s own values take what was meant, and say why another number is none', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/firm')
  const dialog = page.getByRole('dialog')
  const save = dialog.getByRole('button', { name: 'Save' })
  for (const [figure, label, far, meant, shown] of FIGURES) {
    await page.getByRole('button', { name: `Edit: ${figure}`, exact: true }).click()
    const field = dialog.getByLabel(label, { exact: true })
    for (const [text, says] of [
      ['abc', /“abc” is not a number/],
      ['−3', /can’t be below zero/],
    ] as const) {
      await field.fill(text)
      await save.click()
      await expect.soft.poll(() => saidOf(field), `${figure}: “${text}”`).toMatch(says)
    }
    if (far) {
      await field.fill(far[0])
      await save.click()
      await expect.soft(dialog.getByText(far[1]).first(), `${figure}: “${far[0]}”`).toBeVisible()
    }
    await field.fill(meant)
    if (figure.startsWith('Price')) {
      // Nobody pays so much: it is asked back, and stands with a reason.
      await save.click()
      await expect.soft.poll(() => saidOf(field), figure).toMatch(/is unusual/)
      await dialog.getByLabel('Why', { exact: true }).fill('delivered by ferry')
    }
    await save.click()
    await expect(dialog, figure).toHaveCount(0)
    await expect.soft(figureLine(page, figure), figure).toContainText(shown)
  }
  // The tests after this one count with the usual figures.
  for (const [figure] of FIGURES) await resetFigure(page, figure)
})
