import { FigureTable } from '@almanac/ui/figure-table'
import { type Result, together } from './track-words.ts'

const whole = (value: number) => Math.round(value).toLocaleString('en-US')
const percent = (share: number) => `${Math.round(share * 100)} %`

/** Year by year: how many of the beds looked at were expected to fail, and how many did. */
export function YearsTable({ counts }: { counts: Result['counts'] }) {
  return (
    <>
      <p className="mb-2 max-w-[75ch]">{together(counts)}</p>
      <FigureTable
        className="max-w-3xl overflow-x-auto"
        caption="Failures expected and failures that came, year by year"
        heads={['In the year', 'Beds looked at', 'Expected to fail', 'By chance alone', 'Failed']}
        rows={counts.map((one) => ({
          key: one.originDay,
          cells: [
            one.originDay.slice(0, 4),
            whole(one.beds),
            whole(one.expected),
            `${whole(one.low)} to ${whole(one.high)}`,
            whole(one.happened),
          ],
        }))}
      />
      <p className="mt-2 max-w-[75ch] text-small text-soft">
        “By chance alone” holds four years in five if how long beds last were known exactly; it is not, so a year somewhat outside is no
        wonder. Where a bed was lost from sight, or failed between two visits, “failed” counts the part that falls within the year.
      </p>
    </>
  )
}

/** What was said of two years ahead, in tenths of the beds from the least likely to fail to the most, beside what came. */
export function SaidTable({ reliability }: { reliability: Result['reliability'] }) {
  return (
    <FigureTable
      className="max-w-3xl overflow-x-auto"
      caption="Chances given for two years, and the share that failed"
      heads={['We said, of two years', 'Beds', 'Failed']}
      rows={reliability.map((one, i) => ({
        key: String(i),
        cells: [percent(one.chance), whole(one.beds), percent(one.happened)],
      }))}
    />
  )
}
