'use client'
import type { TrackRecord } from '@almanac/contract/forecasts'
import { Button } from '@almanac/ui/button'
import { CalibrationPlot } from '@almanac/ui/calibration-plot'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { EmptyOrFirst } from '@/client/empty-or-first'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { LearnedPart } from './learned.tsx'
import { Misses } from './misses.tsx'
import { RulesTable } from './rules-table.tsx'
import { type Checked, type CheckedResult, give, judge, lean, nearer, tenthsOf } from './track-words.ts'
import { SaidTable, YearsTable } from './years-table.tsx'

/** Past forecasts held against what came, on the firm's own records, in plain words. */
export function TrackRecordPage() {
  const { api } = useSession()
  const read = useQuery(api.forecasts.trackRecord.queryOptions())
  const [asked, setAsked] = useState(false)
  const again = useCommand(api.forecasts.checkAgain.mutationOptions(), { onDone: () => setAsked(true) })
  const failure = (read.error ?? again.error) ? readFailure(read.error ?? again.error) : null
  const checked = read.data?.checked ?? null
  return (
    <>
      <PageHead
        title="Track record"
        above={
          <TextLink href="/coming-due" link={Link}>
            Coming due
          </TextLink>
        }
        lead="We re-ran the forecast as of each January 1, with only what your company knew then, and compared it with what happened."
        actions={
          <Button onClick={() => again.send({})} disabled={again.isPending}>
            Look back again
          </Button>
        }
      />
      {failure ? (
        <Problem happened={failure.message} reference={failure.requestId} onRetry={() => void read.refetch()} retrying={read.isFetching} />
      ) : null}
      {asked ? <Notice>Looking back again. It takes about a minute; the page updates automatically.</Notice> : null}
      {read.isPending ? <Skeleton lines={10} label="Loading past forecasts" /> : null}
      {read.data && !checked ? (
        <EmptyOrFirst first="Nothing to look back on yet" title="We haven’t looked back yet">
          That happens by itself within minutes of the first forecast, then once a week.
        </EmptyOrFirst>
      ) : null}
      {checked?.refusal ? <Notice kind="mind">{checked.refusal}</Notice> : null}
      {checked?.result ? <Findings checked={checked} result={checked.result} widenedBy={read.data?.widenedBy ?? 1} /> : null}
      {read.data ? <LearnedPart fit={(read.data satisfies TrackRecord).fit} /> : null}
    </>
  )
}

function Findings({ checked, result, widenedBy }: { checked: Checked; result: CheckedResult; widenedBy: number }) {
  const display = useDisplay()
  const held = Math.round(result.coverage80 * 100)
  const first = checked.origins[0] ?? checked.asOfDay
  const last = checked.origins.at(-1) ?? checked.asOfDay
  const gain = nearer(result, 'age-only Weibull', display)
  return (
    <>
      <p className="max-w-[75ch] text-lead text-pretty">
        <strong>
          Of 100 due windows we would have given, {held} turned out right{give(result)}.
        </strong>{' '}
        {judge(result)} {lean(result)}
        {gain ? ` Our chances were ${gain} to what came than going by age alone.` : ''}
      </p>
      <p className="mt-1 max-w-[75ch] text-small text-soft">
        {showWhole(result.bedsScored, display)} forecasts, made as of {checked.origins.length} dates (January 1) from {first.slice(0, 4)} to{' '}
        {last.slice(0, 4)}; looked back on {formatDay(checked.asOfDay, display)}. A bed in service on several of them counts each time.
        {result.notes.length > 0 ? ` ${result.notes.join(' ')}` : ''} Water changes, equipment and tests of later years are left out.
        Install dates, resin, people and which supply a site has count as known all along.
      </p>
      <Section title="Were we early or late?">
        <p className="max-w-[75ch] text-soft">
          Each forecast is cut into ten equally likely parts. If the forecasts are honest, every bar is a tenth high. High bars on the left:
          beds failed earlier than we said. On the right: later. At both ends: we were too sure.
        </p>
        <CalibrationPlot title="Where outcomes fell in their forecasts" tenths={tenthsOf(result.bins)} />
        <p className="max-w-[75ch] text-small text-soft">
          A bed that still works, or failed between two visits, has no exact place yet. It’s put at random where it could still be, which
          keeps the picture fair.
        </p>
      </Section>
      <Section title="Compared with simpler rules">
        <RulesTable result={result} />
      </Section>
      {result.counts.length > 0 ? (
        <Section title="Failures by year">
          <YearsTable counts={result.counts} widenedBy={widenedBy} />
        </Section>
      ) : null}
      {result.reliability.length > 0 ? (
        <Section title="Forecast and actual">
          <p className="mb-2 max-w-[75ch] text-soft">
            The same forecasts in ten groups, from the safest beds to the riskiest. Honest chances come true as often as they say.
          </p>
          <SaidTable reliability={result.reliability} />
        </Section>
      ) : null}
      <Section title="Where we were most wrong">
        <Misses worst={result.worst} />
      </Section>
    </>
  )
}
