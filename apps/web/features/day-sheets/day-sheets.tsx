'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { formatDayTitle } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { TabletsNote } from '@/client/tablets-note'
import { useAskedDay } from '@/client/use-asked-day'
import { ChangeCrew } from './change-crew.tsx'
import { CopyDay } from './copy-day.tsx'
import { DayNow } from './day-now.tsx'
import { NewSheet } from './new-sheet.tsx'
import { NoSheets } from './no-sheets.tsx'
import { PaperHead } from './paper-head.tsx'
import { SheetList } from './sheet-list.tsx'
import { FormCrewsPart, StartPlanPart } from './start-plan.tsx'
import { useNow } from './use-expected.ts'

/** The day sheets of one day: one lies open, the others folded to a line each. Day and open sheet stand in the address. */
export function DaySheets() {
  const display = useDisplay()
  const { api } = useSession()
  const { day, today } = useAskedDay()
  const router = useRouter()
  const query = useSearchParams()
  const openId = query.get('sheet')
  const address = (to: string, sheet?: string | null) => `/day-sheets?day=${to}${sheet ? `&sheet=${sheet}` : ''}`
  const sheets = useQuery(api.daySheets.day.queryOptions({ input: { day } }))
  const [form, setForm] = useState<'new' | 'change' | null>(null)
  const unfold = (id: string | null) => router.replace(address(day, id ?? 'none'), { scroll: false })
  const all = sheets.data?.sheets ?? []
  // Without a choice in the address the first sheet lies open.
  const open = openId === 'none' ? null : (all.find((sheet) => sheet.id === openId) ?? all[0] ?? null)
  const needPlace = sheets.data?.needPlace ?? 0
  const nowMs = useNow()
  return (
    <>
      <PaperHead />
      <PageHead
        title={formatDayTitle(day, today, display)}
        lead={
          <span className="print:hidden">
            {day === today ? 'Today. ' : ''}One sheet is open; faint lines inside it are jobs that would fit.{' '}
            {needPlace > 0 ? (
              <TextLink href="/jobs" link={Link}>
                {needPlace === 1 ? 'One job' : `${needPlace} jobs`} to book
              </TextLink>
            ) : null}
            {needPlace > 0 ? '.' : null}
          </span>
        }
        actions={
          <nav aria-label="Days" className="flex flex-wrap gap-2 print:hidden">
            <LinkButton href={address(addDays(day, -1))} link={Link}>
              ← Previous day
            </LinkButton>
            {day === today ? null : (
              <LinkButton href={address(today)} link={Link}>
                Today
              </LinkButton>
            )}
            <LinkButton href={address(addDays(day, 1))} link={Link}>
              Next day →
            </LinkButton>
          </nav>
        }
      />
      <TabletsNote />
      {sheets.error ? <Problem happened={readFailure(sheets.error).message} onRetry={() => void sheets.refetch()} /> : null}
      {sheets.isPending ? <Skeleton lines={6} label="Loading the day sheets" /> : null}
      {sheets.data?.holiday ? (
        <Notice kind="mind">Public holiday: {sheets.data.holiday}. Plans and best places leave this day out.</Notice>
      ) : null}
      {sheets.data && all.length === 0 ? (
        <NoSheets day={day} today={today} copyFrom={sheets.data.copyFrom} onNew={() => setForm('new')} />
      ) : null}
      {sheets.data && all.length > 0 ? (
        <>
          {nowMs !== null && day === today ? <DayNow sheets={all} nowMs={nowMs} /> : null}
          <SheetList
            key={day}
            nowMs={day === today ? nowMs : null}
            sheets={all}
            openId={open?.id ?? null}
            travel={sheets.data}
            onOpen={unfold}
            onChange={() => setForm('change')}
            onDay={(days) => router.push(address(days === 0 ? today : addDays(day, days)))}
          />
          <div className="mt-4 flex flex-wrap gap-3 print:hidden">
            <Button onClick={() => setForm('new')}>Add a crew's sheet</Button>
            {day >= today ? <StartPlanPart day={day} /> : null}
            {day >= today ? <FormCrewsPart day={day} /> : null}
            <CopyDay day={day} copyFrom={sheets.data?.copyFrom ?? null} />
          </div>
        </>
      ) : null}
      {form === 'new' && sheets.data ? (
        <NewSheet
          day={day}
          sheets={all}
          usual={sheets.data.usual}
          onClose={() => setForm(null)}
          onOpened={(id) => {
            setForm(null)
            unfold(id)
          }}
        />
      ) : null}
      {form === 'change' && open ? <ChangeCrew sheet={open} sheets={all} onClose={() => setForm(null)} /> : null}
    </>
  )
}
