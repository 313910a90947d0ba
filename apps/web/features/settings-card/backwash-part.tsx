'use client'
import { backwashWords } from '@almanac/softener/hydraulics/backwash-words'
import type { SiteEvaluation } from '@almanac/softener/site/evaluate-site'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Caution } from '@almanac/ui/caution'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Notice } from '@almanac/ui/notice'
import { useState } from 'react'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { cardDrawing } from './card-drawing.ts'
import { CardLines } from './card-lines.tsx'
import type { CardSite } from './site-of-record.ts'

/** The backwash by season in words, and the bed drawn as it stands in it. */
export function BackwashPart({ site, evaluation }: { site: CardSite; evaluation: SiteEvaluation }) {
  const firm = useRebedFirm()
  const { me, figures } = useSession()
  const display = me.company
  const { input, sources } = site
  const [season, setSeason] = useState<'winter' | 'summer'>('winter')
  const words = backwashWords(evaluation, input, figures, { display, sources })
  if ('reason' in words) return <Notice kind="mind">{words.reason}</Notice>
  const { backwash } = evaluation
  const advised = 'reason' in backwash ? null : (backwash.controlGpm ?? backwash.yearRoundGpm)
  const waterF = season === 'winter' ? evaluation.season.coldestF : evaluation.season.warmestF
  const drawn = cardDrawing(input, input.backwashGpm ?? advised, waterF, firm)
  return (
    <div className="grid gap-x-12 gap-y-6 lg:grid-cols-2">
      <div>
        {words.tone === 'danger' ? (
          <Caution kind="water" word="Resin is lost">
            {words.summary}
          </Caution>
        ) : (
          <Notice kind={words.tone === 'mind' ? 'mind' : 'done'}>{words.summary}</Notice>
        )}
        <CardLines lines={words.lines} />
        {words.notes.map((note) => (
          <p key={note} className="mt-3 max-w-[70ch] text-small">
            {note}
          </p>
        ))}
      </div>
      {drawn.ok ? (
        <div className="min-w-0 print:hidden">
          <ChoiceGroup
            label="Drawn in"
            inline
            name="season"
            value={season}
            choices={[
              { value: 'winter', label: 'winter' },
              { value: 'summer', label: 'summer' },
            ]}
            onChange={(value) => setSeason(value === 'summer' ? 'summer' : 'winter')}
          />
          <BedDrawing
            drawing={{ ...drawn.value, warnings: [] }}
            title={`Bed in ${season} backwash${input.backwashGpm === null ? ', at the flow advised' : ''}`}
            height={520}
          />
          {input.backwashGpm === null ? (
            <p className="text-small text-soft">Drawn at the flow advised, as the flow control fitted is not known.</p>
          ) : null}
        </div>
      ) : null}
    </div>
  )
}
