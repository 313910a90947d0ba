'use client'
import type { BedPage } from '@almanac/contract/beds'
import type { BedBefore } from '@almanac/softener/diagnosis/cause-prior'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { yearsSince } from '@almanac/units/calendar/calendar-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'

/** The bed this page was opened for, null where it was opened for none or while it is read. */
export function useBed(bedId: string | null) {
  const { api } = useSession()
  return useQuery({ ...api.beds.page.queryOptions({ input: { bedId: bedId ?? '' } }), enabled: bedId !== null })
}

/** What the bed's record says before any check: the forecast's chance that it has failed, else its age. */
export function bedBefore(bed: BedPage | undefined, today: string): BedBefore | null {
  if (!bed || bed.endedLatest !== null) return null
  return {
    chanceFailed: bed.forecast?.chanceAlreadyFailed ?? null,
    ageYears: yearsSince(bed.beganEarliest, bed.beganLatest, today),
  }
}

/** Which bed it is about, in a line. */
export function BedBeforeLine({ query }: { query: ReturnType<typeof useBed> }) {
  const texts = useBedTexts()
  const words = useWords('whatsWrong')
  if (query.error)
    return (
      <Problem
        happened={readFailure(query.error).message}
        kept={words('withoutRecord')}
        onRetry={() => void query.refetch()}
        retrying={query.isFetching}
      />
    )
  const bed = query.data
  if (!bed) return <Skeleton lines={1} label={words('loadingBed')} />
  const began = texts.began(bed)
  return (
    <p className="mb-4">
      <TextLink href={`/beds/${bed.id}`} link={Link} strong>
        {bed.site?.label ?? words('inWorkshop')}
      </TextLink>
      <span className="text-soft">
        , {[texts.tank(bed.tank), texts.resin(bed), began ? words('installed', { began }) : null].filter(Boolean).join(', ')}
      </span>
    </p>
  )
}
