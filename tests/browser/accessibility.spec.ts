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
/** Lists repeat themselves: of one with hundreds of rows the first dozen are looked at. */
const FURTHER_ROWS = 'main tbody tr:nth-child(n + 13)'
const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]

for (const [role, paths] of SCREENS)
  test(`${role}: no screen breaks WCAG 2.2 AA in light or dark, or scrolls sideways`, async ({ page }) => {
    test.setTimeout(400_000)
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
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
      const look = () => {
        const axe = new AxeBuilder({ page }).exclude(FURTHER_ROWS)
        return path.includes('view=') ? axe.exclude('main table') : axe // the same list as without the view
      }
      const faults = async (axe: AxeBuilder, colours: string) =>
        (await axe.analyze()).violations.map((one) => `${path}, ${colours}: ${one.id} ${one.nodes[0]?.html.slice(0, 160)}`)
      expect(await faults(look().withTags(WCAG_22_AA), 'light')).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await faults(look().withRules(BY_COLOUR), 'dark')).toEqual([])
      await page.emulateMedia({ colorScheme: 'light' })
      await page.setViewportSize(SIZES[0] as (typeof SIZES)[number])
    }
  })
