import { useDisplay } from '@almanac/ui/display'
import { FigureTable } from '@almanac/ui/figure-table'
import { showFixed } from '@almanac/units/format-number'
import { type CheckedResult, nearer, RULES } from './track-words.ts'

/** The forecast beside simpler rules that learned from the same records. */
export function RulesTable({ result }: { result: CheckedResult }) {
  const display = useDisplay()
  return (
    <>
      <FigureTable
        className="max-w-3xl overflow-x-auto"
        caption="How far off each rule was"
        heads={['Rule', 'How far off', 'This forecast is']}
        rows={result.scores.map((score) => ({
          key: score.method,
          strong: score.method === 'forecast',
          cells: [
            RULES[score.method] ?? score.method,
            showFixed(score.integratedBrier * 100, 2, display),
            score.method === 'forecast' ? '' : (nearer(result, score.method, display) ?? ''),
          ],
        }))}
      />
      <p className="mt-2 max-w-[75ch] text-small text-soft">
        “How far off” is the mean squared miss of the chances given for 6, 12, 18 and 24 months ahead, in hundredths (Brier score, weighted
        for beds lost from sight): 0 is perfect, 25 is a coin toss. Every rule learned from the same records, up to each January 1 only.
      </p>
    </>
  )
}
