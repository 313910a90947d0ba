'use client'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatWholeMoney } from '@almanac/units/money'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { AmountField } from '@/client/amount-field'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { OwnerPart } from './owner-part.tsx'
import { ResinPart } from './resin-part.tsx'
import { useWhatIf } from './use-what-if.ts'
import { WayPart } from './way-part.tsx'

/** Three questions before a rebed: which resin; rebed, clean or replace; owner or firm. Each with its doubt. */
export function RebedChoice({ bedId }: { bedId: string }) {
  const texts = useBedTexts()
  const { api, me } = useSession()
  const query = useQuery(api.bedChoice.facts.queryOptions({ input: { bedId } }))
  const prices = useWhatIf()
  if (query.error)
    return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
  const choice = query.data
  if (!choice) return <Skeleton lines={14} label="Loading the bed" />
  const { plan } = choice
  const rebedMinor = prices.rebed.minor ?? choice.plannedRebedMinor
  const place = plan.site?.label ?? 'Tank in the workshop'
  return (
    <>
      <PageHead
        title={`Rebed options, who: ${place}`}
        lead={[texts.tank(plan.bed), texts.resin(plan.bed), plan.site?.town].filter(Boolean).join(', ')}
        above={
          <TextLink href={`/beds/${bedId}`} link={Link}>
            The bed at {place}
          </TextLink>
        }
        actions={
          <LinkButton href={`/api/beds/${bedId}/plan`} file>
            Rebed plan (PDF)
          </LinkButton>
        }
      />
      <div className="mb-6 max-w-md">
        <AmountField
          label="A planned rebed with 8% costs"
          hint={
            choice.plannedRebedMinor === null
              ? 'Not set yet: the owner sets it under Company settings. A number typed here counts on this page only.'
              : `Company settings say ${formatWholeMoney(choice.plannedRebedMinor, me.company)}; a number typed here counts on this page only.`
          }
          {...prices.rebed.field}
        />
      </div>
      <ResinPart choice={choice} rebedMinor={rebedMinor} />
      <WayPart choice={choice} rebedMinor={rebedMinor} prices={prices} />
      <OwnerPart choice={choice} />
    </>
  )
}
