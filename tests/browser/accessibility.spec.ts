import { expect, type Page, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { type DemoRole, signIn } from '../support/sign-in.ts'

/** A screen by its address, or by the page it is reached from and the first link there that leads to one of its kind. */
type Screen = string | { from: string; link: string }

const SCREENS: [DemoRole | 'nobody', Screen[]][] = [
  ['nobody', ['/sign-in', '/forgot-password']],
  [
    'owner',
    [
      '/coming-due',
      '/coming-due?view=5-years&by=area',
      { from: '/coming-due', link: 'main a[href^="/beds/"]' },
      '/policy',
      '/track-record',
      '/sites',
      { from: '/sites', link: 'main a[href^="/sites/"]:not([href$="/new"])' },
      '/water',
      '/reminders',
      '/reminders/texts',
      '/calls',
      '/rounds',
      '/stores',
      '/imports',
      '/ask-next',
      '/sessions',
      '/firm',
      '/crews',
      '/exports',
      '/changes',
      '/archive',
    ],
  ],
  [
    'dispatcher',
    [
      '/day-sheets',
      '/week',
      '/crews',
      '/jobs',
      { from: '/jobs', link: 'main table a[href^="/jobs/"]' },
      '/which-tank?round=31.5',
      '/whats-wrong?beads=yes',
    ],
  ],
  ['technician', ['/today', { from: '/today', link: 'main a[href^="/visits/"]' }, '/which-tank', '/whats-wrong?tap-water=hard']],
]

async function open(page: Page, screen: Screen): Promise<string> {
  if (typeof screen === 'string') {
    await page.goto(screen)
    return screen
  }
  await page.goto(screen.from)
  const href = (await page.locator(screen.link).first().getAttribute('href')) ?? ''
  await page.goto(href)
  return href
}

for (const [role, screens] of SCREENS)
  test(`${role}: no screen breaks WCAG 2.2 AA in light or dark, or scrolls sideways`, async ({ page }) => {
    test.setTimeout(600_000)
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
    if (role !== 'nobody') await signIn(page, role)
    for (const screen of screens) {
      const name = await open(page, screen)
      await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
      await expect(page.getByText(/^Reading/)).toHaveCount(0)
      await expectAccessible(page, name, name.includes('view=') ? ['main table'] : []) // the same list as without the view
    }
  })
