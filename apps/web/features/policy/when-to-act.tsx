'use client'
import { choicesOf } from '@almanac/records/choices'
import { resinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { FilterSelect } from '@almanac/ui/filter-select'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatWholeMoney, minorPer } from '@almanac/units/money'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { EmptyOrFirst } from '@/client/empty-or-first'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { PolicyAnswer } from './policy-answer.tsx'
import { PolicyCosts } from './policy-costs.tsx'
import { usePolicyInput } from './use-policy-input.ts'

const RESINS = choicesOf(resinKinds, resinKindWords)
const AGES = [8, 10, 12, 15, 20]

/** When it is cheapest to rebed, for one supply and resin, with the firm's costs. */
export function WhenToAct() {
  const { api, me } = useSession()
  const { currency } = me.company
  const minor = minorPer(currency)
  const { input, change } = usePolicyInput()
  const asked = useQuery(api.forecasts.policy.queryOptions({ input, placeholderData: keepPreviousData }))
  const policy = asked.data
  const failure = asked.error ? readFailure(asked.error) : null
  const money = (amount: number) => formatWholeMoney(amount, me.company)
  const examples = policy ? Object.values(policy.costSources).includes('example') : false
  return (
    <>
      <PageHead
        title="Best age to rebed"
        above={
          <TextLink href="/coming-due" link={Link}>
            Coming due
          </TextLink>
        }
        lead="Rebed too early and you waste good resin. Too late, and a failure costs more than a rebed. The cheapest age is in between."
      />
      {failure ? (
        <Problem
          happened={failure.message}
          reference={failure.requestId}
          onRetry={() => void asked.refetch()}
          retrying={asked.isFetching}
        />
      ) : null}
      {asked.isPending ? <Skeleton lines={10} label="Loading what it costs" /> : null}
      {policy?.supplies.length === 0 ? (
        <EmptyOrFirst
          first="No beds in service yet"
          title="No water supply is on record"
          action={
            <LinkButton href="/water" kind="ink" link={Link}>
              Add the water supply
            </LinkButton>
          }
        >
          How long a bed lasts depends on its water.
        </EmptyOrFirst>
      ) : null}
      {policy && policy.supplies.length > 0 ? (
        <>
          <div className="mb-4 flex flex-wrap gap-x-6 gap-y-2">
            <FilterSelect
              label="Water"
              value={policy.waterSupplyId ?? ''}
              onChange={(event) => change({ supply: event.target.value })}
              choices={policy.supplies.map((one) => ({ value: one.id, label: one.name }))}
            />
            <FilterSelect
              label="Resin"
              value={input.resinKind}
              onChange={(event) => change({ resin: event.target.value })}
              choices={RESINS}
            />
            <FilterSelect
              label="Compare with a fixed age of"
              value={String(input.fixedAgeYears)}
              onChange={(event) => change({ age: event.target.value })}
              choices={AGES.map((age) => ({ value: String(age), label: `${age} years` }))}
            />
          </div>
          {examples ? (
            <Notice kind="mind">Some of the costs below are examples. Type your own, or set them under Company settings.</Notice>
          ) : null}
          <PolicyAnswer policy={policy} fixedAge={input.fixedAgeYears} money={money} />
          <Section title="What it costs you">
            <PolicyCosts
              key={JSON.stringify([policy.costs, policy.costSources])}
              policy={policy}
              currency={currency}
              minor={minor}
              change={change}
            />
          </Section>
        </>
      ) : null}
    </>
  )
}
