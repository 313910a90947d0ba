import { expect, test } from '@playwright/test'
import { figureLine, resetFigure } from '../support/firm-figures-page.ts'
import { signIn } from '../support/sign-in.ts'
import { saidOf } from '../support/typed-texts.ts'

/**
 * The firm's figures with a number: which field, what it says of a slip (a number must stand there unless said otherwise), a number that the server knows to be none,
 * one that is meant, and how its line shows it afterwards; where the line is silent of it, how the field has it when the page is opened again.
 */
const FIGURES: readonly [figure: string, field: string, far: [text: string, says: RegExp] | null, meant: string, shown: RegExp | string][] =
  [
    ['Iron allowance', 'Added for each mg/L', ['99999', /99999 is outside 0 to 20/], '1 1/2', /1\.5 gpg per mg\/L/],
    ['Manganese allowance', 'Added for each mg/L', ['1,200', /1200 is outside 0 to 20/], '1,5', /1\.5 gpg per mg\/L/],
    ['Use gravel from this volume', 'From this resin volume', null, '1½', /1½ ft³/],
    ['Reserve capacity', 'How much', ['1 200', /1200 is outside 0 to 7/], '1.5', /1\.5 days’ use/],
    ['Backwash flow', 'Lowest', ['99999', /99999 is outside 0\.5 to 30/], '1 1/2', /5 gpm\/ft² \(1\.5 gpm\/ft² to 8/],
    ['Backwash flow', 'Usual', ['1,200', /1200 is outside 0\.5 to 30/], '5½', /5\.5 gpm\/ft² \(1\.5/],
    ['Backwash flow', 'Highest', ['1 1/2', /must be between the lowest and the highest/], '8½', /to 8\.5 gpm\/ft²/],
    ['Backwash expansion', 'Expansion wanted', ['1 1/2', /0\.015 is outside 0\.1 to 1\.5/], '50', /50%/],
    ['Bags in stock', 'Bag sizes', ['99999', /can’t be right|the most is/], '1 1/2; 0,5', /1½ ft³, ½ ft³/],
    ['10 × 54 in tank', 'Usual resin', ['99999', /can’t be right|the most is/], '1 1/4', /1¼ ft³ of resin/],
    ['10 × 54 in tank', 'Usual gravel', ['99999', /the most is 20,000 lb/], '1 1/2', /1\.5 lb of gravel/],
    ['10 × 54 in tank', 'Openings', ['99999', /the most is 400 in/], '2½; 4', '2.5, 4'],
    ['Outlet hardness after a rebed', 'Must stay below', ['1,200', /1200 is outside 0\.1 to 10/], '1 1/2', /below 1(\.5|½) gpg/],
    ['Metered house valve', 'Distributor tube, outside diameter', ['1,200', /the most is 400 in/], '1 1/2', /tube 1\.5 in outside/],
    ['Metered house valve', 'Backwash flows it comes with', ['99999', /the most is 500 gpm/], '1 1/2; 1,75', /backwash 1\.5, 1\.75 gpm/],
    ['Metered house valve', 'Refill flow', ['99999', /can’t be right|the most is/], '1 1/2', /refill 1\.5 gpm/],
    ['Price of salt', 'Price for a 40 lb bag', ['99999', /the most is/], '1,200', /\$1,200\.00 for a 40 lb bag/],
    ['Price of water', 'Price for 1,000 gallons', null, '1\u00a0200', /\$1,200\.00 for 1,000 gallons/],
  ]

test.describe.configure({ timeout: 240_000 })

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
    if (typeof shown === 'string') {
      await page.reload()
      await page.getByRole('button', { name: `Edit: ${figure}`, exact: true }).click()
      await expect.soft(field, figure).toHaveValue(shown)
      await page.keyboard.press('Escape')
      await expect(dialog).toHaveCount(0)
    } else await expect.soft(figureLine(page, figure), figure).toContainText(shown)
  }
  // The tests after this one count with the usual figures.
  for (const figure of new Set(FIGURES.map(([figure]) => figure))) await resetFigure(page, figure)
})

test('a tank that is added and the points of a curve say of each text why it is no number', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/firm')
  const dialog = page.getByRole('dialog')
  const save = dialog.getByRole('button', { name: 'Save' })
  await page.getByRole('button', { name: 'Add a tank' }).click()
  for (const [label, meant] of [
    ['Diameter', '13 1/2'],
    ['Height without the valve', '54½'],
  ] as const) {
    const field = dialog.getByLabel(label, { exact: true })
    for (const rest of ['Usual resin', 'Usual gravel']) await dialog.getByLabel(rest, { exact: true }).fill('1')
    for (const other of ['Diameter', 'Height without the valve']) await dialog.getByLabel(other, { exact: true }).fill('13')
    for (const [text, says] of [
      ['abc', /“abc” is not a number/],
      ['−3', /can’t be below zero/],
      ['1,200', /the most is 400 in/],
      ['99999', /the most is 400 in/],
    ] as const) {
      await field.fill(text)
      await save.click()
      await expect.soft.poll(() => saidOf(field), `${label}: “${text}”`).toMatch(says)
    }
    await field.fill(meant)
  }
  await page.keyboard.press('Escape')

  const curve = 'Salt and capacity, 8% crosslink'
  await page.getByRole('button', { name: `Edit: ${curve}`, exact: true }).click()
  const points = dialog.getByLabel('Points of the curve', { exact: true })
  for (const [text, says] of [
    ['abc', /“abc” is not two numbers/],
    ['1 1/2 20', /“1 1\/2 20” is not two numbers/],
    ['−3 20', /-3 is outside 0\.5 to 40 lb\/ft³|−3 is outside 0\.5 to 40 lb\/ft³/],
    ['1,200 20', /1200 is outside 0\.5 to 40 lb\/ft³/],
    ['99999 20', /99999 is outside 0\.5 to 40 lb\/ft³/],
  ] as const) {
    await points.fill(`${text}\n30 30`)
    await save.click()
    await expect.soft(dialog.getByText(says).first(), `${curve}: “${text}”`).toBeVisible()
  }
  await points.fill('4½ 15,5\n10 27.5')
  await save.click()
  await expect(dialog).toHaveCount(0)
  await expect(figureLine(page, curve)).toContainText('4.5 → 15.5, 10 → 27.5')
  await resetFigure(page, curve)
})
