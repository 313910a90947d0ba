'use client'
import { DEMAND_CURVES, type DemandCurveId } from '@almanac/softener/flow/demand-curves'
import { flowWords } from '@almanac/softener/flow/flow-words'
import type { SiteEvaluation } from '@almanac/softener/site/evaluate-site'
import { Notice } from '@almanac/ui/notice'
import { Select } from '@almanac/ui/select'
import { formatFlowGpm } from '@almanac/units/format'
import type { CardChanges } from '@/client/settings-card/card-changes'
import { CardLines } from '@/client/settings-card/card-lines'
import type { CardSite } from '@/client/settings-card/site-of-record'
import { useCardSpeaking } from '@/client/settings-card/use-card-speaking'

type Props = { site: CardSite; evaluation: SiteEvaluation; curve: DemandCurveId; change: (change: Partial<CardChanges>) => void }

/** What the house may draw at once against what the softener carries and what its bed lets pass. */
export function FlowPart({ site, evaluation, curve, change }: Props) {
  const speaking = useCardSpeaking()
  const { card, display } = speaking
  const words = flowWords(evaluation, site.input, { ...speaking, sources: site.sources })
  const { flow } = evaluation
  if ('reason' in words || 'reason' in flow) return <Notice kind="mind">{'reason' in words ? words.reason : ''}</Notice>
  const bars = [
    { name: card('homeAtPeak'), gpm: flow.demandGpm, className: 'fill-ink' },
    { name: card('carries'), gpm: flow.carriesGpm, className: 'fill-water' },
    { name: card('lostClean'), gpm: flow.at15Psi.clean, className: 'fill-bead' },
    { name: card('lostAged'), gpm: flow.at15Psi.aged, className: 'fill-bead' },
  ]
  const most = Math.max(...bars.map((bar) => bar.gpm))
  return (
    <div className="grid gap-x-12 gap-y-6 lg:grid-cols-2">
      <div>
        <Notice kind={words.tone === 'mind' ? 'mind' : 'done'}>{words.summary}</Notice>
        <CardLines lines={words.lines} />
      </div>
      <div className="print:hidden">
        <ul className="mb-6 grid gap-3" aria-label={card('flowsCompared')}>
          {bars.map((bar) => (
            <li key={bar.name}>
              <span className="flex justify-between gap-4">
                {bar.name} <span>{formatFlowGpm(bar.gpm, display)}</span>
              </span>
              <svg aria-hidden="true" width="100%" height="10" className="block">
                <rect width={`${(100 * bar.gpm) / most}%`} height="10" className={bar.className} />
              </svg>
            </li>
          ))}
        </ul>
        <Select
          label={card('peakBy')}
          hint={card('peakByHint')}
          value={curve}
          choices={Object.values(DEMAND_CURVES).map(({ id }) => ({ value: id, label: card(`curve/${id}`) }))}
          onChange={(event) => change({ curve: event.target.value === 'nspc' ? 'nspc' : 'ipc' })}
        />
      </div>
    </div>
  )
}
