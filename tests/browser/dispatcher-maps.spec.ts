import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('the map of a day’s drives opens with the network cut, and no other host is ever asked', async ({ page, baseURL }) => {
  const hosts = new Set<string>()
  page.on('request', (request) => request.url().startsWith('http') && hosts.add(new URL(request.url()).host))
  await signIn(page, 'dispatcher')
  for (
    let days = 0;
    days < 5 &&
    !(await page
      .getByText(/, map$/)
      .first()
      .isVisible());
    days++
  ) {
    const before = page.url()
    await page.getByRole('link', { name: 'Next day' }).click()
    await expect(page).not.toHaveURL(before)
    await expect(page.locator('[data-open]').or(page.getByText('No crew has a sheet on this day'))).toBeVisible()
  }
  await page.context().setOffline(true)
  await page
    .getByText(/, map$/)
    .first()
    .click()
  const map = page.getByRole('figure').filter({ hasText: /^Drives of/ })
  await expect(map.locator('svg circle').first()).toBeVisible()
  await expect(map.locator('svg').getByText('yard')).toBeVisible()
  await map.getByRole('button', { name: /Show as table/ }).click()
  await expect(map.getByRole('columnheader', { name: 'Where' })).toBeVisible()
  expect([...hosts]).toEqual([new URL(baseURL ?? '').host])
})

test('a site’s pin is moved by arrow keys and by a press, and kept', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/sites')
  await page.getByRole('table').getByRole('link').first().click()
  await page.getByRole('button', { name: 'Edit site' }).click()
  const coordinates = page.getByRole('textbox', { name: 'Coordinates' })
  const pin = page.getByRole('button', { name: /^Pin of / })
  await expect(pin).toBeVisible()
  const before = await coordinates.inputValue()
  await pin.focus()
  await page.keyboard.press('Shift+ArrowRight')
  await expect(coordinates).not.toHaveValue(before)
  const [latitude, longitude] = (await coordinates.inputValue()).split(', ').map(Number)
  if (before) {
    const [north, west] = before.split(', ').map(Number)
    expect(Math.abs((latitude ?? 0) - (north ?? 0))).toBeLessThan(1e-4)
    expect(longitude).toBeGreaterThan(west ?? 0)
  }
  const box = await pin.boundingBox()
  if (!box) throw new Error('no map')
  await page.mouse.click(box.x + box.width * 0.3, box.y + box.height * 0.3)
  await expect(coordinates).not.toHaveValue(`${latitude}, ${longitude}`)
  const pressed = await coordinates.inputValue()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('dialog')).toBeHidden()
  await page.reload()
  await page.getByRole('button', { name: 'Edit site' }).click()
  await expect(coordinates).toHaveValue(pressed)
})
