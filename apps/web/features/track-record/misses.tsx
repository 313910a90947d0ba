import { useDisplay } from '@almanac/ui/display'
import { formatDay } from '@almanac/units/format-day'
import { formatChance } from '@almanac/units/format-number'
import Link from 'next/link'
import type { CheckedResult } from './track-words.ts'

/** The forecasts that were most wrong, each with a way to the bed's record. */
export function Misses({ worst }: { worst: CheckedResult['worst'] }) {
  const display = useDisplay()
  if (worst.length === 0) return <p className="text-soft">No forecast was clearly wrong yet.</p>
  return (
    <ol className="max-w-3xl border-t border-line">
      {worst.map((miss) => (
        <li key={`${miss.bedId}-${miss.originDay}`} className="border-b border-line py-2">
          <Link href={`/beds/${miss.bedId}`} className="font-semibold underline decoration-edge underline-offset-4 hover:decoration-ink">
            {miss.siteLabel ?? 'A tank in the workshop'}
          </Link>{' '}
          {miss.failed ? (
            <>
              failed {miss.endedLatest ? `by ${formatDay(miss.endedLatest, display)}` : 'within two years'}, though on{' '}
              {formatDay(miss.originDay, display)} we gave it only a chance of {formatChance(miss.chance24Months, display)} to fail within
              two years.
            </>
          ) : (
            <>
              was still working two years after {formatDay(miss.originDay, display)}, though we gave it a chance of{' '}
              {formatChance(miss.chance24Months, display)} to fail by then.
            </>
          )}
        </li>
      ))}
    </ol>
  )
}
