'use client'
import { settingsCard } from '@almanac/softener/setting/settings-card'
import type { SiteEvaluation } from '@almanac/softener/site/evaluate-site'
import { Caution } from '@almanac/ui/caution'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { useSession } from '@/client/providers'
import type { CardChanges } from './card-address.ts'
import { CardLines } from './card-lines.tsx'
import { DosePart } from './dose-part.tsx'
import type { CardSite } from './site-of-record.ts'

type Props = {
  site: CardSite
  evaluation: SiteEvaluation
  changes: CardChanges
  change: (change: Partial<CardChanges>) => void
}

/** The card itself: what to set, the steps, what follows; then what other doses would cost. */
export function CardPart({ site, evaluation, changes, change }: Props) {
  const { me, figures } = useSession()
  const { input, sources, valve } = site
  const card = settingsCard(evaluation, input, figures, { display: me.company, sources, valveLabel: valve?.label ?? null })
  if ('reason' in card)
    return (
      <Section title="The card">
        <Notice kind="mind">{card.reason} Backwash and flow below don’t depend on it.</Notice>
      </Section>
    )
  const { setting } = evaluation
  return (
    <>
      <Section title={card.control === 'timer' ? 'Set at the timer' : 'Enter at the valve'}>
        {card.warnings.map((warning) => (
          <Notice key={warning} kind="mind">
            {warning}
          </Notice>
        ))}
        {card.cautions.map((caution) => (
          <Caution key={caution} kind="water" word={input.salt === 'KCl' ? 'Potassium' : 'Sodium'}>
            {caution}
          </Caution>
        ))}
        <div className="grid gap-x-12 gap-y-6 lg:grid-cols-2">
          <CardLines lines={card.enter} strong />
          <div>
            <h3 className="mb-1 font-semibold">The regeneration, step by step</h3>
            <CardLines lines={card.steps} />
          </div>
        </div>
      </Section>
      <Section title="What follows from it">
        <div className="grid gap-x-12 gap-y-6 lg:grid-cols-2">
          <CardLines lines={card.follows} />
          {'reason' in setting ? null : (
            <div className="print:hidden">
              <DosePart setting={setting} doseChanged={changes.doseLbFt3 !== null} change={change} />
            </div>
          )}
        </div>
      </Section>
    </>
  )
}
