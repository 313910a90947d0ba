type App = { baseUrl: string; signIns: object[] }
type Bench = {
  say: (line: string) => void
  openApp: (how: { demo: boolean }) => Promise<App>
  later: (close: () => Promise<void>) => void
}

/** Compressed JavaScript that the first picture of a field page may need, in bytes. */
const MOST_BYTES = 180_000

/**
 * The tablet's pages of a served app of its own with the demo: compressed JavaScript, targets below 48 px and broken rules of WCAG 2.2 AA on every page and step of each kind of visit; with the
 * processor slowed down four times how long a cold start takes, with a server and with its process stopped, and how soon a press is drawn.
 */
export default async function field({ say, openApp, later }: Bench) {
  const { ensureBrowser } = await import('../browser.mjs')
  const browser = await ensureBrowser(say)
  const app = await openApp({ demo: true })
  Object.assign(process.env, {
    CHROMIUM_PATH: browser.executablePath ?? '',
    BASE_URL: app.baseUrl,
    DEMO_SIGN_INS: JSON.stringify(app.signIns),
  })
  const { measureTablet } = await import('./field/measure-tablet.ts')
  const figures = await measureTablet({ say, later })
  const { looks, tooSmall, faults, weight } = figures
  const heaviest = Math.max(...weight.map((one) => one.brotli))
  say(`looked ${looks} times; targets below 48 px: ${tooSmall.length === 0 ? 'none' : tooSmall.join('; ')}`)
  say(`broken rules: ${faults.length === 0 ? 'none' : faults.join('; ')}`)
  return { ...figures, holds: heaviest <= MOST_BYTES && tooSmall.length + faults.length === 0 }
}
