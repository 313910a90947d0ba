'use client'
import { settingsCard } from '@almanac/softener/setting/settings-card'
import type { SiteEvaluation } from '@almanac/softener/site/evaluate-site'
import { Caution } from '@almanac/ui/caution'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { useSession } from '@/client/providers'
import type { CardChanges } from '@/client/settings-card/card-changes'
import { CardLines } from '@/client/settings-card/card-lines'
import type { CardSite } from '@/client/settings-card/site-of-record'
import { useCardSpeaking } from '@/client/settings-card/use-card-speaking'
import { DosePart } from './dose-part.tsx'

type Props = {
  site: CardSite
  evaluation: SiteEvaluation
  changes: CardChanges
  change: (change: Partial<CardChanges>) => void
}

/** The card itself: what to set, the steps, what follows; then what other doses would cost. */
export function CardPart({ site, evaluation, changes, change }: Props) {
  const { figures } = useSession()
  const speaking = useCardSpeaking()
  const say = speaking.card
  const { input, sources } = site
  const card = settingsCard(evaluation, input, figures, { ...speaking, sources })
  if ('reason' in card)
    return (
      <Section title={say('theCard')}>
        <Notice kind="mind">{say('restStands', { reason: card.reason })}</Notice>
      </Section>
    )
  const { setting } = evaluation
  return (
    <>
      <Section title={say(card.control === 'timer' ? 'setAtTimer' : 'enterAtValve')}>
        {card.warnings.map((warning) => (
          <Notice key={warning} kind="mind">
            {warning}
          </Notice>
        ))}
        {card.cautions.map((caution) => (
          <Caution key={caution} kind="water" word={say(input.salt === 'KCl' ? 'potassium' : 'sodium')}>
            {caution}
          </Caution>
        ))}
        <div className="grid gap-x-12 gap-y-6 lg:grid-cols-2">
          <CardLines lines={card.enter} strong />
          <div>
            <h3 className="mb-1 font-semibold">{say('stepByStep')}</h3>
            <CardLines lines={card.steps} />
          </div>
        </div>
      </Section>
      <Section title={say('whatFollows')}>
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
