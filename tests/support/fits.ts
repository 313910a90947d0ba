import { expect, type Page } from '@playwright/test'

/** What does not fit on a page as it stands: a page wider than its window, texts cut off, targets over one another. Empty where all fits. */
async function misfits(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    const name = (element: Element) => `${element.tagName.toLowerCase()} “${(element.textContent ?? '').trim().slice(0, 40)}”`
    const shown = (element: Element) =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && element.getClientRects().length > 0
    const root = document.documentElement
    if (root.scrollWidth > root.clientWidth + 1) {
      const wide = [...document.querySelectorAll('body *')].filter(
        (one) => shown(one) && one.getBoundingClientRect().right > root.clientWidth + 1,
      )
      found.push(`the page is ${root.scrollWidth} px in ${root.clientWidth}: ${wide.slice(-1).map(name).join()}`)
    }
    // A box that a text is too wide for. Boxes in a line of text have no width of their own.
    for (const box of document.querySelectorAll('button, h1, h2, h3, legend, label, dt, dd, [role=note], output, p, li')) {
      if (!shown(box) || box.clientWidth === 0 || box.classList.contains('sr-only') || box.closest('.sr-only')) continue
      if (box.scrollWidth > box.clientWidth + 1) found.push(`cut: ${name(box)} ${box.scrollWidth} px in ${box.clientWidth}`)
    }
    // Targets over one another; what sticks to an edge lies over what scrolls below it.
    const stuck = (element: Element) => {
      for (let one: Element | null = element; one; one = one.parentElement)
        if (['sticky', 'fixed'].includes(getComputedStyle(one).position)) return true
      return false
    }
    // What is folded out lies over the page: only what lies in one layer can be in each other's way.
    const layer = (element: Element) => {
      for (let one: Element | null = element.parentElement; one; one = one.parentElement)
        if (getComputedStyle(one).position === 'absolute') return one
      return null
    }
    const targets = [...document.querySelectorAll('a[href], button, input, select, textarea')].filter(
      (one) => shown(one) && !stuck(one) && !one.closest('.sr-only'),
    )
    const boxes = targets.map((one) => ({ one, box: one.getBoundingClientRect() })).filter(({ box }) => box.width > 4 && box.height > 4)
    boxes.forEach(({ one, box }, i) => {
      for (const { one: other, box: its } of boxes.slice(i + 1)) {
        if (one.contains(other) || other.contains(one) || layer(one) !== layer(other)) continue
        const across = Math.min(box.right, its.right) - Math.max(box.left, its.left)
        const down = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top)
        if (across > 1 && down > 1) found.push(`over one another: ${name(one)} and ${name(other)}`)
      }
    })
    return found
  })
}

const WINDOWS = [
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
  { width: 1024, height: 768 },
] as const

/** Holds a page, as it stands, to fit a phone, a tablet upright and a tablet lying. `what` names it where it does not. */
export async function expectToFit(page: Page, what: string): Promise<void> {
  for (const window of WINDOWS) {
    await page.setViewportSize(window)
    expect(await misfits(page), `${what} at ${window.width} px`).toEqual([])
  }
}
