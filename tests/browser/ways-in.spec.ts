import AxeBuilder from '@axe-core/playwright'
import { expect, type Locator, type Page, test } from '@playwright/test'
import { type DemoRole, signIn } from '../support/sign-in.ts'

/** A hand that gets somewhere: each call is one press. Tab and typing are none, as moving a mouse is none. */
type Hand = { presses: number; press: (target: Locator) => Promise<void>; find: (words: string, wanted: Locator) => Promise<void> }

const MOST_TABS = 150
const field = (page: Page) => page.getByRole('combobox', { name: 'Search' })

function mouse(page: Page): Hand {
  const hand: Hand = {
    presses: 0,
    press: async (target) => {
      await target.click()
      hand.presses++
    },
    find: async (words, wanted) => {
      const lens = page.getByRole('button', { name: 'Search', exact: true })
      await hand.press((await lens.isVisible()) ? lens : field(page))
      await field(page).pressSequentially(words, { delay: 15 })
      await hand.press(wanted)
    },
  }
  return hand
}

function keyboard(page: Page): Hand {
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
      await expect(field(page)).toBeFocused()
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

/** Asks the API as the signed-in person, past the screens. */
async function ask<T>(page: Page, path: string, json: unknown): Promise<T> {
  const answer = await page.request.post(`/api/rpc/${path}`, { data: { json }, headers: { 'x-csrf-token': 'orpc' } })
  return ((await answer.json()) as { json: T }).json
}

type Known = { siteId: string; label: string; customer: string; phone: string }

/** A customer of the demo with a telephone number. */
async function someCustomer(page: Page): Promise<Known> {
  const { rows } = await ask<{ rows: { id: string }[] }>(page, 'sites/list', { limit: 30 })
  for (const { id } of rows.slice(10)) {
    type Site = { label: string; whom: { customerName: string | null; called: { phone: string } | null } }
    const { label, whom } = await ask<Site>(page, 'sites/page', { siteId: id })
    if (whom.customerName && whom.called) return { siteId: id, label, customer: whom.customerName, phone: whom.called.phone }
  }
  throw new Error('no site of the demo has a customer with a number')
}

/** Two letters swapped in the last word that is long enough, as quick fingers do. */
function withSlip(text: string): string {
  const words = text.split(' ')
  const at = words.findLastIndex((word) => /^\p{L}{5,}$/u.test(word))
  const word = words[at]
  if (!word) throw new Error(`${text} has no word long enough for a slip`)
  words[at] = `${word.slice(0, 2)}${word[3]}${word[2]}${word.slice(4)}`
  return words.join(' ')
}

const option = (page: Page, words: string) => page.getByRole('option').filter({ hasText: words }).first()

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

test('each role has six entries at most, in one line at 1024 px; the rest folds out of More and in again', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  for (const role of ['owner', 'dispatcher', 'technician'] as const) {
    await signIn(page, role)
    await page.goto('/sites')
    const navigation = page.getByRole('navigation', { name: 'Main' })
    const entries = await navigation.getByRole('link').all()
    expect(entries.length).toBeGreaterThanOrEqual(4)
    expect(entries.length).toBeLessThanOrEqual(6)
    const tops = await Promise.all(entries.map(async (one) => (await one.boundingBox())?.y))
    expect(new Set(tops).size).toBe(1)
    expect((await page.getByRole('banner').boundingBox())?.height).toBeLessThan(70)
    const more = navigation.getByRole('button', { name: 'More' })
    await more.click()
    await expect(more).toHaveAttribute('aria-expanded', 'true')
    await expect(navigation.getByRole('link', { name: 'Water' })).toBeVisible()
    await page.keyboard.press('Escape')
    await expect(more).toHaveAttribute('aria-expanded', 'false')
    await expect(more).toBeFocused()
    await page.context().clearCookies()
  }
})

test('the search says what it found and what it did not, waits with Enter for its answers, and Escape leaves it', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await expect(page.getByText(/^(Reading|Loading)/)).toHaveCount(0)
  await page.keyboard.press('/')
  await page.keyboard.type('zzqqzzqq')
  await expect(page.getByText('Nothing found for “zzqqzzqq”.')).toBeVisible()
  await expect(page.getByRole('banner').getByRole('link', { name: 'Add a site' })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByText('Nothing found')).toBeHidden()
  await page.keyboard.press('Escape')
  await expect(field(page)).toHaveValue('')

  const { label, customer, siteId } = await someCustomer(page)
  // The answer takes longer than the fingers: Enter must not open what the text before found.
  await page.route('**/api/rpc/find/look', async (route) => {
    await new Promise((next) => setTimeout(next, 800))
    await route.continue()
  })
  await field(page).pressSequentially('sto', { delay: 10 })
  await expect(page.getByRole('option', { name: 'Stores' })).toBeVisible()
  // A street and number may be in two towns.
  await field(page).fill(`${label} ${customer}`)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(new RegExp(siteId), { timeout: 10_000 })
  // Nothing that was typed stands in an address.
  expect(new URL(page.url()).search).toBe('')
  await expect(field(page)).toHaveValue('')
})

test('whoever does not want the key "/" switches it off', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/sites')
  await page
    .getByRole('banner')
    .getByRole('button', { name: /^Marian/ })
    .click()
  await page.getByRole('checkbox', { name: 'Press / to search' }).uncheck()
  await page.keyboard.press('Escape')
  await page.keyboard.press('/')
  await expect(field(page)).not.toBeFocused()
})

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])
  test(`search, menu and a bed’s head break no rule of WCAG 2.2 AA at ${size.width} px, light and dark`, async ({ page }) => {
    test.setTimeout(120_000)
    await page.setViewportSize(size)
    await signIn(page, 'owner')
    await page.goto('/sites')
    await expect(page.getByText(/^(Reading|Loading)/)).toHaveCount(0)
    const { label } = await someCustomer(page)
    const faults = async () => {
      const found: string[] = []
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme })
        const axe = new AxeBuilder({ page }).exclude('main table').withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        found.push(...(await axe.analyze()).violations.map((one) => `${colorScheme}: ${one.id} ${one.nodes[0]?.html.slice(0, 160)}`))
      }
      return found
    }
    await page.keyboard.press('/')
    await page.keyboard.type(label)
    await expect(option(page, label)).toBeVisible()
    expect(await faults()).toEqual([])
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await page
      .getByRole('banner')
      .getByRole('button', { name: size.width < 1024 ? /^Menu/ : /^More/ })
      .click()
    expect(await faults()).toEqual([])
    await page.goto('/coming-due')
    await page.getByRole('table').getByRole('link').first().click()
    await expect(page.getByRole('heading', { name: /^Due about/ })).toBeVisible()
    expect(await faults()).toEqual([])
    if (size.width < 640) {
      // When due, whom to call, then the drawing.
      const top = async (target: Locator) => (await target.boundingBox())?.y ?? 0
      const due = await top(page.getByRole('heading', { name: /^Due about/ }))
      const call = await top(page.getByRole('link', { name: /^Call / }))
      const drawing = await top(
        page
          .locator('main figure, main svg[role="img"]')
          .filter({ hasNot: page.locator('[data-ribbon]') })
          .last(),
      )
      expect(due).toBeLessThan(call)
      expect(call).toBeLessThan(size.height)
      expect(call).toBeLessThan(drawing)
    }
  })
