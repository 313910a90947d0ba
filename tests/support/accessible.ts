import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** What a page is held against. */
export const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
/** What a change of colours alone can break; everything else was looked at in light. */
const BY_COLOUR = ['color-contrast', 'link-in-text-block']
/** Lists repeat themselves: of one with hundreds of rows the first six are looked at. */
const FURTHER_ROWS = 'main tbody tr:nth-child(n + 7)'
/** A desk's, a tablet's and a phone's. What folds for a tablet folds for a phone too, so the rules are asked at the other two. */
const SIZES = [
  { width: 1440, height: 900, rules: true },
  { width: 1024, height: 768, rules: false },
  { width: 390, height: 844, rules: true },
]

/** Expects that the page as it is now scrolls sideways nowhere and breaks no rule of WCAG 2.2 AA, light and dark. `without`: parts looked at elsewhere. */
export async function expectAccessible(page: Page, name: string, without: readonly string[] = []): Promise<void> {
  const faults = async (colours: string, width: number) => {
    const axe = [FURTHER_ROWS, ...without].reduce((all, part) => all.exclude(part), new AxeBuilder({ page }))
    const { violations } = await (colours === 'dark' ? axe.withRules(BY_COLOUR) : axe.withTags(WCAG_22_AA)).analyze()
    return violations.map(({ id, nodes }) => `${name}, ${colours}, ${width} px: ${id} ${nodes[0]?.html.slice(0, 160)}`)
  }
  for (const { width, height, rules } of SIZES) {
    await page.setViewportSize({ width, height })
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    await expect.poll(wide, { message: `${name} at ${width} px scrolls sideways`, timeout: 3000 }).toBeLessThanOrEqual(1)
    if (!rules) continue
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await faults(colorScheme, width)).toEqual([])
    }
    await page.emulateMedia({ colorScheme: 'light' })
  }
  await page.setViewportSize({ width: 1440, height: 900 })
}
