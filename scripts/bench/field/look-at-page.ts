import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { WCAG_22_AA } from '../../../tests/support/accessible.ts'
import { tooSmall } from '../../../tests/support/tablet.ts'

/** What pages were found wanting in: targets below 48 px, and rules of WCAG 2.2 AA broken, each with the place where it was first seen. */
export type Found = { looks: number; small: Map<string, string>; faults: Map<string, string> }
export const nothingFound = (): Found => ({ looks: 0, small: new Map(), faults: new Map() })

/** Looks at a page as it is now. */
export async function lookAt(page: Page, place: string, found: Found): Promise<void> {
  found.looks++
  for (const one of await tooSmall(page)) if (!found.small.has(one)) found.small.set(one, place)
  const { violations } = await new AxeBuilder({ page }).withTags(WCAG_22_AA).analyze()
  for (const { id, nodes } of violations) {
    const what = `${id} ${nodes[0]?.html.slice(0, 120)}`
    if (!found.faults.has(what)) found.faults.set(what, place)
  }
}

/** From now on the page counts how long after each press it is drawn again (Event Timing, W3C), in ms, in steps of 8. */
export const countPresses = (page: Page): Promise<void> =>
  page.addInitScript(() => {
    const all: number[] = []
    Object.assign(window, { pressTimes: all })
    new PerformanceObserver((list) => {
      for (const { name, duration } of list.getEntries()) if (/^(pointerup|click|keydown)$/.test(name)) all.push(duration)
    }).observe({ type: 'event', buffered: true, durationThreshold: 16 } as PerformanceObserverInit)
  })

/** The times counted on the page that is open now; a press that was drawn within a frame is not among them. */
export const pressTimes = (page: Page): Promise<number[]> => page.evaluate(() => (window as unknown as { pressTimes: number[] }).pressTimes)
