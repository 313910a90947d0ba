'use client'
import type { CheckId } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { triage } from '@almanac/softener/diagnosis/triage'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Section } from '@almanac/ui/section'
import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { usePermission, useSession } from '@/client/providers'
import { useLocale } from '@/client/use-locale'
import { useToday } from '@/client/use-today'
import { AdvicePart } from './advice-part.tsx'
import { AllChecks } from './all-checks.tsx'
import { readTold } from './answers.ts'
import { BedBeforeLine, bedBefore, useBed } from './bed-before.tsx'
import { CauseBars } from './cause-bars.tsx'
import { CheckCard } from './check-card.tsx'
import { EmergencyPanel } from './emergency-panel.tsx'
import { NextCheck } from './next-check.tsx'
import { useDiagnosisAnswers } from './use-diagnosis-answers.ts'

/** What is wrong? Checks answered by a tap, the causes with their shares, the check worth most next, and what to do. */
export function WhatsWrong() {
  const { me } = useSession()
  const today = useToday()
  const mayPropose = usePermission('propose:job')
  const display = me.company
  const bedId = useSearchParams().get('bedId')
  const bed = useBed(bedId)
  const [told, setTold] = useDiagnosisAnswers()
  const [skipped, setSkipped] = useState<readonly CheckId[]>([])
  const locale = useLocale()
  const evidence = useMemo(() => readTold(told, display.unitSystem, locale), [told, display, locale])
  const found = useMemo(() => triage({ ...evidence, skipped, bed: bedBefore(bed.data, today) }), [evidence, skipped, bed.data, today])
  const { emergency, next, advice, answered, problems } = found.value
  const site = bed.data?.site
  const proposeHref =
    mayPropose && site && bed.data
      ? `/jobs/new?site=${site.id}&bed=${bed.data.id}${advice?.jobKind ? `&kind=${advice.jobKind}` : ''}`
      : null
  const begin = () => {
    setTold({ answers: {}, numbers: {} })
    setSkipped([])
  }
  const card = (id: string) => {
    const check = CHECKS.find((one) => one.id === id)
    return check ? <CheckCard check={check} told={told} display={display} onTold={setTold} /> : null
  }
  return (
    <div className="field mx-auto max-w-[1180px] bg-paper">
      <PageHead
        title="What is wrong?"
        lead="Answer what you know, in any order. The most useful check comes first."
        actions={answered > 0 ? <Button onClick={begin}>Start over</Button> : undefined}
      />
      {bedId ? <BedBeforeLine query={bed} /> : null}
      {emergency ? <EmergencyPanel emergency={emergency} proposeHref={proposeHref} /> : null}
      {problems.map((sentence) => (
        <Notice key={sentence} kind="mind">
          {sentence}
        </Notice>
      ))}
      <div className="grid gap-x-12 lg:grid-cols-[minmax(0,1fr)_minmax(0,26rem)] lg:grid-rows-[auto_1fr]">
        <div className="min-w-0">
          {next ? (
            <NextCheck
              check={next.check}
              onAnswer={(value) => setTold({ ...told, answers: { ...told.answers, [next.check.id]: value } })}
              onSkip={() => setSkipped([...skipped, next.check.id])}
            />
          ) : answered > 0 && !emergency ? (
            <Notice kind="done">No more checks would help.</Notice>
          ) : null}
        </div>
        <div className="min-w-0 max-lg:mt-8 lg:row-span-2">
          {advice ? (
            <Section title="What to do">
              <AdvicePart advice={advice} proposeHref={proposeHref} />
            </Section>
          ) : null}
          <Section title={answered > 0 ? 'What it may be' : 'What it may be, before any check'}>
            <p className="mb-2 text-small text-soft">{found.assumptions[0]}</p>
            <CauseBars found={found} />
          </Section>
        </div>
        <div className="mt-8 min-w-0">
          <AllChecks told={told} render={card} />
        </div>
      </div>
    </div>
  )
}
