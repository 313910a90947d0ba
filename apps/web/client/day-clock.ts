import { dayIn } from '@almanac/units/calendar/zone-clock'

const MINUTE_MS = 60_000

/** What wakes a sleeping page, whose timers stood still meanwhile. */
const WAKING = ['visibilitychange', 'focus', 'pageshow', 'online'] as const

type Page = Pick<Window, 'addEventListener' | 'removeEventListener'>

/** The day that this device's clock shows in a company's zone, 'YYYY-MM-DD'. */
export const dayNow = (timeZone: string): string => dayIn(timeZone, Date.now())

/**
 * Looks at the clock as each minute begins, since midnight falls on a full minute in every zone, and whenever the page wakes. `tell` is called each time; what it
 * reads decides whether the day is another. Answers how to stop.
 */
export function watchClock(tell: () => void, page: Page = window): () => void {
  let timer: ReturnType<typeof setTimeout>
  const wait = () => {
    timer = setTimeout(
      () => {
        tell()
        wait()
      },
      MINUTE_MS - (Date.now() % MINUTE_MS),
    )
  }
  wait()
  for (const name of WAKING) page.addEventListener(name, tell, true)
  return () => {
    clearTimeout(timer)
    for (const name of WAKING) page.removeEventListener(name, tell, true)
  }
}
