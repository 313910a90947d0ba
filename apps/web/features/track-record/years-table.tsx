import { useDisplay } from '@almanac/ui/display'
import { FigureTable } from '@almanac/ui/figure-table'
import { formatPercent, showWhole } from '@almanac/units/format-number'
import { type CheckedResult, ranges, together } from './track-words.ts'

/** Year by year: how many of the beds looked at were expected to fail, and how many did. */
export function YearsTable({ counts, widenedBy }: { counts: CheckedResult['counts']; widenedBy: number }) {
  const display = useDisplay()
  return (
    <>
      <p className="mb-2 max-w-[75ch]">
        {together(counts, display)} {ranges(counts, widenedBy, display)}
      </p>
      <FigureTable
        className="max-w-3xl overflow-x-auto"
        caption="Failures expected and actual, by year"
        heads={['In the year', 'Beds looked at', 'Expected to fail', 'Likely range', 'Failed']}
        rows={counts.map((one) => ({
          key: one.originDay,
          cells: [
            one.originDay.slice(0, 4),
            showWhole(one.beds, display),
            showWhole(one.expected, display),
            `${showWhole(one.low, display)} to ${showWhole(one.high, display)}`,
            showWhole(one.happened, display),
          ],
        }))}
      />
      <p className="mt-2 max-w-[75ch] text-small text-soft">
        “Likely range” should hold the count in 8 years of 10. If nobody saw a bed later, or it failed between two visits, “failed” counts
        the part that falls in the year.
      </p>
    </>
  )
}

/** What was said of two years ahead, in tenths of the beds from the least likely to fail to the most, beside what came. */
export function SaidTable({ reliability }: { reliability: CheckedResult['reliability'] }) {
  const display = useDisplay()
  return (
    <FigureTable
      className="max-w-3xl overflow-x-auto"
      caption="Our two-year chances and the share that failed"
      heads={['We said, for two years', 'Beds', 'Failed']}
      rows={reliability.map((one, i) => ({
        key: String(i),
        cells: [formatPercent(one.chance, display), showWhole(one.beds, display), formatPercent(one.happened, display)],
      }))}
    />
  )
}
