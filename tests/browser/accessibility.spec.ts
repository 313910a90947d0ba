import AxeBuilder from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { type DemoRole, signIn } from '../support/sign-in.ts'

const SCREENS: [DemoRole, string[]][] = [
  [
    'owner',
    [
      '/coming-due',
      '/coming-due?view=5-years&by=area',
      '/policy',
      '/track-record',
      '/sites',
      '/water',
      '/reminders',
      '/stores',
      '/imports',
      '/ask-next',
      '/sessions',
      '/firm',
    ],
  ],
  ['dispatcher', ['/day-sheets', '/crews', '/jobs', '/which-tank?round=31.5', '/whats-wrong?beads=yes']],
  ['technician', ['/today', '/which-tank', '/whats-wrong?tap-water=hard']],
]
const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
/** What a change of colours alone can break; everything else was looked at in light. */
const BY_COLOUR = ['color-contrast', 'link-in-text-block']
const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]

for (const [role, paths] of SCREENS)
  for (const colorScheme of ['light', 'dark'] as const)
    test(`${role}: no screen breaks WCAG 2.2 AA or scrolls sideways, ${colorScheme}`, async ({ page }) => {
      test.setTimeout(400_000)
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await signIn(page, role)
      for (const path of paths) {
        await page.goto(path)
        await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
        await expect(page.getByText(/^Reading/)).toHaveCount(0)
        for (const size of SIZES) {
          await page.setViewportSize(size)
          const wide = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
          await expect.poll(wide, { message: `${path} at ${size.width} px scrolls sideways`, timeout: 3000 }).toBeLessThanOrEqual(1)
        }
        const axe = new AxeBuilder({ page })
        if (path.includes('view=')) axe.exclude('main table') // the same list as without the view, and long
        const found = await (colorScheme === 'dark' ? axe.withRules(BY_COLOUR) : axe.withTags(WCAG_22_AA)).analyze()
        expect(found.violations.map((one) => `${path}: ${one.id} ${one.nodes[0]?.html.slice(0, 160)}`)).toEqual([])
        await page.setViewportSize(SIZES[0] as (typeof SIZES)[number])
      }
    })
