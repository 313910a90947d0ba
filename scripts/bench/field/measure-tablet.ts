import { type Browser, chromium, expect, type Page } from '@playwright/test'
import { jobKinds } from '../../../packages/records/job-kind.ts'
import { bookAtNight, demoTechnician } from '../../../tests/support/book-visits.ts'
import { ownServer } from '../../../tests/support/own-server.ts'
import { signInByForm } from '../../../tests/support/sign-in.ts'
import { startVisit } from '../../../tests/support/start-visit.ts'
import { keepForLater, newTablet } from '../../../tests/support/tablet.ts'
import { countPresses, lookAt, nothingFound, pressTimes } from './look-at-page.ts'
import { NEXT, walk } from './walk-visit.ts'
import { type Weight, weigh } from './weigh-scripts.ts'

const SLOWER = 4
const asRoot = process.getuid?.() === 0
type Tools = { say: (line: string) => void; later: (close: () => Promise<void>) => void }

const slowDown = async (page: Page) => (await page.context().newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
const toStep = (page: Page) => page.getByRole('button', { name: NEXT }).waitFor()
const seconds = (ms: number) => Math.round(ms / 10) / 100

/** Today, a rebed that was not begun and one at a step. */
async function weights(browser: Browser): Promise<Weight[]> {
  const context = await browser.newContext({ baseURL: process.env.BASE_URL, serviceWorkers: 'block' })
  const page = await context.newPage()
  await signInByForm(page, demoTechnician())
  await page.goto('/today')
  const rebed = page.locator('main li a[href^="/visits/"]').filter({ hasText: /Rebed/ })
  await rebed.first().waitFor()
  const href = (await rebed.first().getAttribute('href')) ?? ''
  const today = await weigh(browser, 'Today', page, '/today', (one) => one.locator('main li a[href^="/visits/"]').first().waitFor())
  const brief = await weigh(browser, 'a rebed, its brief', page, href, (one) => one.getByRole('button', { name: 'Start visit' }).waitFor())
  await page.goto(href)
  await startVisit(page)
  await toStep(page)
  const step = await weigh(browser, 'a rebed, its first step', page, href, toStep)
  await context.close()
  return [today, brief, step]
}

/** All that `npm run bench -- field` measures in browsers. */
export async function measureTablet({ say, later }: Tools) {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH || undefined,
    args: ['--disable-gpu', ...(asRoot ? ['--no-sandbox'] : [])],
  })
  later(() => browser.close())
  const weight = await weights(browser)
  const kb = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`
  for (const { page, files, brotli, gzip, laterBrotli } of weight)
    say(
      `${page}: ${kb(brotli)} of JavaScript by brotli (${kb(gzip)} by gzip) in ${files} files; after its first picture ${kb(laterBrotli)} more`,
    )

  const visits = await bookAtNight(jobKinds, { atBeds: jobKinds })
  const rebed = visits.find((one) => one.kind === 'rebed')
  if (!rebed) throw new Error('no rebed was booked')
  const server = await ownServer()
  later(server.stop)
  const tablet = newTablet(server.baseURL)
  later(tablet.close)
  await server.start()
  let page = await tablet.switchOn()
  const found = nothingFound()
  await signInByForm(page, demoTechnician())
  await keepForLater(page, visits.length)
  await lookAt(page, 'Today', found)
  await page.getByRole('button', { name: 'Menu' }).click()
  await page.getByRole('button', { name: 'Sign out' }).waitFor()
  await lookAt(page, 'Today, menu', found)
  for (const { kind, visitId } of visits.filter((one) => one !== rebed)) {
    await page.goto(`/visits/${visitId}`)
    await page.getByRole('button', { name: 'Start visit' }).waitFor()
    await lookAt(page, `${kind}, brief`, found)
    await startVisit(page, 'Start visit', NEXT)
    await walk(page, kind, found)
  }
  say(`${visits.length - 1} kinds of visit walked to their closing forms`)

  const href = `/visits/${rebed.visitId}`
  await page.goto(href)
  await page.getByRole('button', { name: 'Start visit' }).waitFor()
  await lookAt(page, 'rebed, brief', found)
  await startVisit(page)
  await toStep(page)
  /** A tablet that was off is switched on and opens the visit: seconds until its step is there. */
  const coldStart = async () => {
    await tablet.switchOff()
    page = await tablet.switchOn()
    await countPresses(page)
    await slowDown(page)
    const begun = performance.now()
    await page.goto(href, { waitUntil: 'commit' })
    await toStep(page)
    return seconds(performance.now() - begun)
  }
  const withServer = await coldStart()
  await server.stop()
  const withoutServer = await coldStart()
  const steps = await walk(page, 'rebed', found)
  const presses = (await pressTimes(page)).sort((a, b) => a - b)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('How did the visit end?')
  const middle = presses[Math.floor(presses.length / 2)] ?? 0
  const slowest = presses.at(-1) ?? 0
  say(`processor ${SLOWER} times slower, a cold start until the step is shown: ${withServer} s, server stopped ${withoutServer} s`)
  say(`${presses.length} presses took longer than a frame to be drawn: half of them ${middle} ms or less, the slowest ${slowest} ms`)
  say(`the slowest “Next step” until the next one was shown: ${seconds(Math.max(...steps) * 1000)} s, ${steps.length} steps`)
  return {
    ...{ weight, looks: found.looks },
    tooSmall: [...found.small].map(([what, place]) => `${what} (${place})`),
    faults: [...found.faults].map(([what, place]) => `${what} (${place})`),
    coldStartS: { withServer, withoutServer },
    pressMs: { middle, slowest },
    slowestStepS: seconds(Math.max(...steps) * 1000),
  }
}
