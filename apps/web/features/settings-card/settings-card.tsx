'use client'
import type { SoftenerSettings } from '@almanac/contract/softeners'
import { evaluateSite } from '@almanac/softener/site/evaluate-site'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import type { CardChanges } from '@/client/settings-card/card-changes'
import { siteOfRecord } from '@/client/settings-card/site-of-record'
import { useCardSpeaking } from '@/client/settings-card/use-card-speaking'
import { useBedTexts } from '@/client/use-bed-texts'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { BackwashPart } from './backwash-part.tsx'
import { useCardChanges } from './card-address.ts'
import { CardInputs } from './card-inputs.tsx'
import { CardPart } from './card-part.tsx'
import { FlowPart } from './flow-part.tsx'

/** How a softener should be set: the card for its valve, what other doses cost, its backwash by season and the flow it carries. */
export function SettingsCard({ softenerId }: { softenerId: string }) {
  const { api } = useSession()
  const query = useQuery(api.softeners.settings.queryOptions({ input: { softenerId } }))
  const words = useWords('card')
  const [changes, change] = useCardChanges()
  if (query.error)
    return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
  if (!query.data) return <Skeleton lines={14} label={words('loading')} />
  return <Card record={query.data} changes={changes} change={change} />
}

type Props = { record: SoftenerSettings; changes: CardChanges; change: (change: Partial<CardChanges>) => void }

function Card({ record, changes, change }: Props) {
  const firm = useRebedFirm()
  const texts = useBedTexts()
  const { me, figures } = useSession()
  const today = useToday()
  const display = me.company
  const speaking = useCardSpeaking()
  const { card } = speaking
  const site = siteOfRecord(record, changes, { ...firm, card }, today)
  const { input, tank } = site
  const evaluation = evaluateSite(input, figures, speaking)
  const several = record.tanks.length > 1
  return (
    <>
      <PageHead
        title={card('title', { softener: record.label })}
        lead={[record.site.label, record.site.town, tank ? texts.tank(tank) : null].filter(Boolean).join(', ')}
        above={
          <span className="flex flex-wrap gap-x-2 print:hidden">
            <TextLink href="/sites" link={Link}>
              {card('sites')}
            </TextLink>
            <span aria-hidden="true">/</span>
            <TextLink href={`/sites/${record.site.id}`} link={Link}>
              {record.site.label}
            </TextLink>
          </span>
        }
        actions={<PrintButton kind="ink">{card('print')}</PrintButton>}
      />
      <p className="hidden print:block">
        {me.company.name}, {formatDay(today, display)}
      </p>
      <CardInputs record={record} site={site} changes={changes} change={change} />
      {'reason' in evaluation ? (
        <Notice kind="mind">{evaluation.reason}</Notice>
      ) : (
        <>
          <CardPart site={site} evaluation={evaluation} changes={changes} change={change} />
          <Section title={card('backwashTitle')}>
            <BackwashPart site={site} evaluation={evaluation} />
          </Section>
          <Section title={card('flowTitle')}>
            <FlowPart site={site} evaluation={evaluation} curve={changes.curve} change={change} />
          </Section>
          {several ? (
            <p className="mt-6 text-small text-soft">
              {card(tank?.bed ? 'otherTank' : 'noBedInTank', { position: String(tank?.position ?? 1) })}
            </p>
          ) : null}
        </>
      )}
    </>
  )
}
