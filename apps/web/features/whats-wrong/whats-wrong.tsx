'use client'
import type { CheckId } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { triage } from '@almanac/softener/diagnosis/triage'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Section } from '@almanac/ui/section'
import { useWords } from '@almanac/words/use-words'
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
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const today = useToday()
  const mayPropose = usePermission('propose:job')
  const display = me.company
  const bedId = useSearchParams().get('bedId')
  const bed = useBed(bedId)
  const [told, setTold] = useDiagnosisAnswers()
  const [skipped, setSkipped] = useState<readonly CheckId[]>([])
  const locale = useLocale()
  const evidence = useMemo(() => readTold(told, display.unitSystem, locale), [told, display, locale])
  const found = useMemo(
    () => triage({ ...evidence, display, words: said, skipped, bed: bedBefore(bed.data, today) }),
    [evidence, display, said, skipped, bed.data, today],
  )
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
        title={words('title')}
        lead={words('lead')}
        actions={answered > 0 ? <Button onClick={begin}>{words('startOver')}</Button> : undefined}
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
            <Notice kind="done">{words('noMoreChecks')}</Notice>
          ) : null}
        </div>
        <div className="min-w-0 max-lg:mt-8 lg:row-span-2">
          {advice ? (
            <Section title={words('whatToDo')}>
              <AdvicePart advice={advice} proposeHref={proposeHref} />
            </Section>
          ) : null}
          <Section title={words(answered > 0 ? 'mayBe' : 'mayBeBefore')}>
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
