import { expect, type Page, test } from '@playwright/test'
import { type Hand, keyboard, mouse } from '../support/hands.ts'
import { option, someCustomer } from '../support/head-search.ts'
import { type DemoRole, signIn } from '../support/sign-in.ts'

/** Two letters swapped in the last word that is long enough, as quick fingers do. */
function withSlip(text: string): string {
  const words = text.split(' ')
  const at = words.findLastIndex((word) => /^\p{L}{5,}$/u.test(word))
  const word = words[at]
  if (!word) throw new Error(`${text} has no word long enough for a slip`)
  words[at] = `${word.slice(0, 2)}${word[3]}${word[2]}${word.slice(4)}`
  return words.join(' ')
}

type Act = { what: string; go: (page: Page, hand: Hand) => Promise<void> }
const ACTS: [DemoRole, Act[]][] = [
  [
    'owner',
    [
      {
        what: 'whom to call of what comes due',
        go: async (page, hand) => {
          await hand.press(page.getByRole('table').getByRole('link').first())
          await expect(page.getByRole('heading', { name: /^Due about/ })).toBeVisible()
          await expect(page.getByRole('link', { name: /^Call / })).toHaveAttribute('href', /^tel:\+?\d{7,}$/)
        },
      },
      {
        what: 'a customer’s page, with a slip in the name',
        go: async (page, hand) => {
          const { customer, label, siteId } = await someCustomer(page)
          await hand.find(withSlip(`${label} ${customer}`), option(page, customer))
          await expect(page).toHaveURL(new RegExp(siteId))
          await expect(page.getByRole('heading', { name: customer })).toBeVisible()
        },
      },
      {
        what: 'the year’s plan',
        go: async (page, hand) => {
          await hand.press(page.getByRole('navigation', { name: 'Main' }).getByRole('button', { name: 'More' }))
          await hand.press(page.getByRole('link', { name: 'Rebeds by month' }))
          await expect(page.getByText(/rebeds a month/).first()).toBeVisible()
        },
      },
    ],
  ],
  [
    'dispatcher',
    [
      {
        what: 'today’s sheets',
        go: async (page) => {
          await expect(page).toHaveURL(/day-sheets$/)
          await expect(page.locator('[data-open]').or(page.getByText('No crew has a sheet on this day'))).toBeVisible()
        },
      },
      {
        what: 'a job to book',
        go: async (page, hand) => {
          await hand.press(page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: 'Jobs' }))
          await hand.press(page.getByRole('table').getByRole('link').first())
          await expect(page.getByRole('heading', { name: 'Best places' })).toBeVisible()
        },
      },
      {
        what: 'a caller by telephone number, grouped as it was said',
        go: async (page, hand) => {
          const { customer, phone, siteId } = await someCustomer(page)
          const said = (phone.replace(/\D/g, '').match(/.{1,3}/g) ?? []).join(' ')
          await hand.find(said, option(page, phone))
          await expect(page).toHaveURL(new RegExp(siteId))
          await expect(page.getByRole('heading', { name: customer })).toBeVisible()
        },
      },
    ],
  ],
  [
    'technician',
    [
      {
        what: 'today’s visits',
        go: async (page) => {
          await expect(page).toHaveURL(/today$/)
          await expect(page.locator('main a[href^="/visits/"]').first()).toBeVisible()
        },
      },
      {
        what: 'the next visit’s first step',
        go: async (page, hand) => {
          await hand.press(page.locator('main a[href^="/visits/"]').first())
          await hand.press(page.getByRole('button', { name: /^(Start|Resume) visit$/ }))
          await expect(page.getByRole('button', { name: /next step/i })).toBeVisible()
        },
      },
      {
        what: 'an address',
        go: async (page, hand) => {
          const { label, siteId } = await someCustomer(page)
          await hand.find(withSlip(label), option(page, label))
          await expect(page).toHaveURL(new RegExp(siteId))
        },
      },
    ],
  ],
]

for (const [role, acts] of ACTS)
  for (const [by, hands] of [
    ['mouse', mouse],
    ['keyboard', keyboard],
  ] as const)
    test(`${role}, by ${by}: each of the three first acts in at most two presses from signing in`, async ({ page }) => {
      test.setTimeout(150_000)
      page.setDefaultTimeout(20_000)
      for (const { what, go } of acts) {
        await signIn(page, role)
        await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
        await expect(page.getByText(/^(Reading|Loading)/)).toHaveCount(0)
        const hand = hands(page)
        await go(page, hand)
        expect(hand.presses, what).toBeLessThanOrEqual(2)
      }
    })
