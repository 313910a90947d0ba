'use client'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { Ending } from './ending.tsx'
import { LateTurns } from './late-turns.tsx'
import { MonthTurns } from './month-turns.tsx'

/** What comes again by agreement: this month’s turns to approve, what was not done, what ends soon. */
export function Rounds() {
  const { api } = useSession()
  const thisMonth = useToday().slice(0, 7)
  const [month, setMonth] = useState<string | null>(null)
  const query = useQuery({
    ...api.agreements.rounds.queryOptions({ input: { month: month ?? thisMonth } }),
    placeholderData: keepPreviousData,
  })
  return (
    <>
      <PageHead
        title="Rounds"
        lead="Regular visits, salt and rentals. Approve what is due in a month, and it becomes jobs."
        actions={<PrintButton>Print the lists</PrintButton>}
      />
      {query.error ? (
        <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
      ) : null}
      {query.isPending ? <Skeleton lines={10} label="Loading the rounds" /> : null}
      {query.data ? (
        <>
          <MonthTurns key={query.data.month} rounds={query.data} onMonth={setMonth} />
          <LateTurns turns={query.data.late} thisMonth={thisMonth} />
          <Ending rows={query.data.ending} />
        </>
      ) : null}
    </>
  )
}
