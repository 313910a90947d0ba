'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { backwashWords } from '@almanac/softener/hydraulics/backwash-words'
import { settingsCard } from '@almanac/softener/setting/settings-card'
import { evaluateSite } from '@almanac/softener/site/evaluate-site'
import { Caution } from '@almanac/ui/caution'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { useSession } from '@/client/providers'
import { AS_RECORDED } from '@/client/settings-card/card-changes'
import { CardLines } from '@/client/settings-card/card-lines'
import { siteOfRecord } from '@/client/settings-card/site-of-record'
import { useCardSpeaking } from '@/client/settings-card/use-card-speaking'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import type { Draft } from './draft.ts'
import { settingsNow } from './settings-now.ts'

/** How the valve should be set after this visit, worked out on the tablet from what it keeps and what was measured by now. */
export function VisitCard({ visit, draft }: { visit: VisitPage; draft: Pick<Draft, 'answers' | 'resinKind'> }) {
  const firm = useRebedFirm()
  const { figures } = useSession()
  const today = useToday()
  const speaking = useCardSpeaking()
  const say = speaking.card
  const record = settingsNow(visit, draft, today)
  if (!record) return null
  const { input, sources } = siteOfRecord(record, AS_RECORDED, { ...firm, card: say }, today)
  const evaluation = evaluateSite(input, figures, speaking)
  if ('reason' in evaluation) return <Notice kind="mind">{evaluation.reason}</Notice>
  const card = settingsCard(evaluation, input, figures, { ...speaking, sources })
  const backwash = backwashWords(evaluation, input, figures, { ...speaking, sources })
  return (
    <>
      {'reason' in card ? (
        <Notice kind="mind">{card.reason}</Notice>
      ) : (
        <>
          {card.warnings.map((warning) => (
            <Notice key={warning} kind="mind">
              {warning}
            </Notice>
          ))}
          <Section title={say(card.control === 'timer' ? 'setAtTimer' : 'enterAtValve')}>
            <CardLines lines={card.enter} strong />
          </Section>
          <Section title={say('stepByStep')}>
            <CardLines lines={card.steps} />
          </Section>
          {card.cautions.map((caution) => (
            <Caution key={caution} kind="water" word={say('sodium')}>
              {caution}
            </Caution>
          ))}
        </>
      )}
      <Section title={say('backwashTitle')}>
        {'reason' in backwash ? (
          <p>{backwash.reason}</p>
        ) : (
          <>
            <Notice kind={backwash.tone === 'good' ? 'done' : 'mind'}>{backwash.summary}</Notice>
            <CardLines lines={backwash.lines} />
          </>
        )}
      </Section>
    </>
  )
}
