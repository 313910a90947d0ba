import { nearer, type Result, RULES } from './track-words.ts'

/** The forecast beside simpler rules that learned from the same records. */
export function RulesTable({ scores }: { scores: Result['scores'] }) {
  return (
    <div className="overflow-x-auto">
      <table className="w-full max-w-3xl border-collapse text-left">
        <caption className="sr-only">How far each rule was off</caption>
        <thead className="text-small text-soft">
          <tr>
            <th scope="col" className="py-1.5 pr-3 font-medium">
              Rule
            </th>
            <th scope="col" className="py-1.5 pr-3 text-right font-medium">
              How far off
            </th>
            <th scope="col" className="py-1.5 text-right font-medium">
              This forecast is
            </th>
          </tr>
        </thead>
        <tbody>
          {scores.map((score) => (
            <tr key={score.method} className="border-t border-line">
              <th scope="row" className={`py-1.5 pr-3 ${score.method === 'forecast' ? 'font-semibold' : 'font-normal'}`}>
                {RULES[score.method] ?? score.method}
              </th>
              <td className="py-1.5 pr-3 text-right">{(score.integratedBrier * 100).toFixed(2)}</td>
              <td className="py-1.5 text-right">{score.method === 'forecast' ? '' : nearer(scores, score.method)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="mt-2 max-w-[75ch] text-small text-soft">
        “How far off” is the mean squared miss of the chances given for 6, 12, 18 and 24 months ahead, in hundredths (Brier score, weighted
        for beds lost from sight): 0 is a prophet, 25 a tossed coin. All rules learned from the same records, up to each new year’s day and
        no further.
      </p>
    </div>
  )
}
