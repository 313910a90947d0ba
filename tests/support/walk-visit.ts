import type { Page } from '@playwright/test'

/** Numbers a crew would type. Where one cannot be, as a foot of tube or twelve feet of resin, the next is tried. */
const PLAUSIBLE = ['12', '1.5', '53'] as const

/** Answers all that the present step asks: confirms, chooses the first, measures. Looks at kinds of fields, at no words. `tried` counts what was typed before. */
export async function answerAll(page: Page, tried = 0): Promise<void> {
  for (const box of await page.locator('main').getByRole('checkbox').all()) if (!(await box.isChecked())) await box.check()
  for (const group of await page.locator('main fieldset').all()) {
    const choices = group.getByRole('radio')
    if ((await choices.count()) > 0 && (await group.locator('input:checked').count()) === 0) await choices.first().check()
  }
  for (const field of await page.locator('main input[inputmode=decimal]').all())
    if ((await field.inputValue()) === '' || (await field.getAttribute('aria-invalid')) === 'true') await field.fill(PLAUSIBLE[tried] ?? '')
  // A number that is asked back wants a reason beside it.
  for (const field of await page.locator('main input[type=text]:not([inputmode=decimal])').all())
    if ((await field.inputValue()) === '') await field.fill('visto en el sitio')
}
