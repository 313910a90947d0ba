import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { type BrowserContext, chromium, expect, type Page } from '@playwright/test'

const asRoot = process.getuid?.() === 0

/** A tablet: one browser with all that it keeps, to be switched on and off, or killed as by a flat battery. `close` throws it away. */
export function newTablet(baseURL: string) {
  const profile = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-tablet-'))
  let context: BrowserContext | undefined
  const switchOff = async () => context?.close()
  return {
    switchOn: async (): Promise<Page> => {
      context = await chromium.launchPersistentContext(profile, {
        ...{ baseURL, executablePath: process.env.CHROMIUM_PATH || undefined, viewport: { width: 1024, height: 768 }, locale: 'en-US' },
        ...{ reducedMotion: 'reduce', args: ['--disable-gpu', ...(asRoot ? ['--no-sandbox'] : [])] },
      })
      context.setDefaultTimeout(30_000)
      return context.pages()[0] ?? context.newPage()
    },
    switchOff,
    kill: async () => {
      const wire = await context?.browser()?.newBrowserCDPSession()
      const { processInfo = [] } = (await wire?.send('SystemInfo.getProcessInfo')) ?? {}
      const { id } = processInfo.find((one) => one.type === 'browser') ?? {}
      if (!id) throw new Error('the browser does not say which process it is')
      const gone = new Promise((resolve) => context?.once('close', resolve))
      process.kill(id, 'SIGKILL')
      await gone
      context = undefined
    },
    close: async () => {
      await switchOff()
      fs.rmSync(profile, { recursive: true, force: true })
    },
  }
}

/** How many answers of the server lie in the browser's database. */
const kept = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const open = indexedDB.open('almanac-field')
        open.onsuccess = () => {
          const count = open.result.transaction('kept').objectStore('kept').count()
          count.onsuccess = () => {
            open.result.close()
            resolve(count.result)
          }
        }
      }),
  )

/** Today's work opened, the shell and more than `visits` answers kept for when there is no server. */
export async function keepForLater(page: Page, visits: number): Promise<void> {
  await page.goto('/today')
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await expect.poll(() => kept(page), { timeout: 30_000 }).toBeGreaterThan(visits)
}

/** What on a page can be touched and is smaller than 48 px in either direction; radios and boxes are touched by the row that is their label. */
export const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('a[href], button, select, textarea, summary, input')].flatMap((one) => {
      const touched = one instanceof HTMLInputElement && /radio|checkbox/.test(one.type) ? (one.closest('label') ?? one) : one
      const { width, height } = touched.getBoundingClientRect()
      return width > 1 && (width < 47.5 || height < 47.5)
        ? [
            `${one.tagName} "${(one.getAttribute('aria-label') ?? touched.textContent)?.trim().slice(0, 30)}" ${Math.round(width)}×${Math.round(height)}`,
          ]
        : []
    }),
  )
