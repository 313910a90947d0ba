'use client'
import { backwashWords } from '@almanac/softener/hydraulics/backwash-words'
import type { SiteEvaluation } from '@almanac/softener/site/evaluate-site'
import { BedDrawing } from '@almanac/ui/bed-drawing'
import { Caution } from '@almanac/ui/caution'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Notice } from '@almanac/ui/notice'
import { useState } from 'react'
import { useSession } from '@/client/providers'
import { CardLines } from '@/client/settings-card/card-lines'
import type { CardSite } from '@/client/settings-card/site-of-record'
import { useCardSpeaking } from '@/client/settings-card/use-card-speaking'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { cardDrawing } from './card-drawing.ts'

/** The backwash by season in words, and the bed drawn as it stands in it. */
export function BackwashPart({ site, evaluation }: { site: CardSite; evaluation: SiteEvaluation }) {
  const firm = useRebedFirm()
  const { figures } = useSession()
  const speaking = useCardSpeaking()
  const { card } = speaking
  const { input, sources } = site
  const [season, setSeason] = useState<'winter' | 'summer'>('winter')
  const words = backwashWords(evaluation, input, figures, { ...speaking, sources })
  if ('reason' in words) return <Notice kind="mind">{words.reason}</Notice>
  const { backwash } = evaluation
  const advised = 'reason' in backwash ? null : (backwash.controlGpm ?? backwash.yearRoundGpm)
  const waterF = season === 'winter' ? evaluation.season.coldestF : evaluation.season.warmestF
  const drawn = cardDrawing(input, input.backwashGpm ?? advised, waterF, firm)
  return (
    <div className="grid gap-x-12 gap-y-6 lg:grid-cols-2">
      <div>
        {words.tone === 'danger' ? (
          <Caution kind="water" word={card('resinLost')}>
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
            label={card('drawnIn')}
            inline
            name="season"
            value={season}
            choices={[
              { value: 'winter', label: card('winter') },
              { value: 'summer', label: card('summer') },
            ]}
            onChange={(value) => setSeason(value === 'summer' ? 'summer' : 'winter')}
          />
          <BedDrawing
            drawing={{ ...drawn.value, warnings: [] }}
            title={card(input.backwashGpm === null ? `bed/${season}Advised` : `bed/${season}`)}
            height={520}
          />
          {input.backwashGpm === null ? <p className="text-small text-soft">{card('drawnAdvised')}</p> : null}
        </div>
      ) : null}
    </div>
  )
}
