'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { ProcedureStepId } from '@almanac/records/procedure-step'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Button } from '@almanac/ui/button'
import { Caution } from '@almanac/ui/caution'
import { Steps } from '@almanac/ui/steps'
import { useWords } from '@almanac/words/use-words'
import { useEffect, useRef, useState } from 'react'
import { photographsOfStep } from '@/client/photographs/photographs-of-step'
import { Piece } from '@/client/piece'
import { useSession } from '@/client/providers'
import { DRAWING, PHOTOGRAPHS } from './late-pieces.ts'
import { StepAsk } from './step-ask.tsx'
import { stepMark } from './step-marks.ts'
import { StepTimer } from './step-timer.tsx'
import type { DraftHandle } from './use-draft.ts'
import { isOpen, tankOfVisit, type VisitReading } from './visit-amounts.ts'

type Props = {
  procedure: Procedure
  handle: DraftHandle
  visit: VisitPage
  /** Takes the start back; null once something was entered. */
  onTakeBack: (() => void) | null
}

/** Steps where the crew wants the tank before its eyes. */
const DRAWN = new Set<ProcedureStepId>(['cut-tube', 'pour-gravel', 'pour-resin'])

/** One step at a time: its cautions first, then what to do, then what is asked. */
export function ProcedureSteps({ procedure, handle, visit, onTakeBack }: Props) {
  const { me } = useSession()
  const words = useWords('visit')
  const { draft, change } = handle
  const step = procedure.steps[draft.step]
  const head = useRef<HTMLHeadingElement>(null)
  const [tried, setTried] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the heading takes the focus when the step changes, for screen readers and keyboards
  useEffect(() => {
    head.current?.focus()
    setTried(false)
    window.scrollTo({ top: 0 })
  }, [draft.step])
  if (!step) return null
  const by: VisitReading = { locale: me.company.locale, units: me.company.unitSystem, tank: tankOfVisit(visit, me.company) }
  const open = step.asks.filter((ask) => isOpen(ask, draft.answers[ask.id], by))
  const go = (to: number) => change(to === procedure.steps.length ? { step: to, finishedAt: new Date().toISOString() } : { step: to })
  const next = () => {
    if (open.length > 0) setTried(true)
    else {
      change({ passed: [...draft.passed.filter((id) => id !== step.id), step.id] })
      go(draft.step + 1)
    }
  }
  const photographs = photographsOfStep[step.id]
  const drawn = DRAWN.has(step.id) && visit.bed !== null
  const ahead = procedure.steps.slice(draft.step + 1, draft.step + 4).map((one) => one.title.toLowerCase())
  return (
    <>
      <Steps
        current={draft.step + 1}
        total={procedure.steps.length}
        done={procedure.steps.map((one) => stepMark(one, draft, by).done)}
        label={words('procedure', { procedure: procedure.title })}
      />
      {step.cautions.map((caution) => (
        <Caution key={caution.text} kind={caution.kind}>
          {caution.text}
        </Caution>
      ))}
      <h1 ref={head} tabIndex={-1} className="mt-5 text-h1 font-semibold outline-none">
        {step.title}
      </h1>
      {step.dose === null ? null : <p className="text-h1 font-semibold text-bead-ink">{step.dose}</p>}
      <div className={drawn ? 'md:grid md:grid-cols-2 md:gap-8' : undefined}>
        <div>
          <p className="mt-3 mb-5">{step.text}</p>
          {step.waitMinutes === null ? null : (
            <StepTimer
              minutes={step.waitMinutes}
              startedAt={draft.timer?.stepId === step.id ? draft.timer.startedAt : null}
              onStart={() => change({ timer: { stepId: step.id, startedAt: new Date().toISOString() } })}
              onStop={() => change({ timer: null })}
            />
          )}
          <div className="flex flex-col gap-5">
            {step.asks.map((ask) => (
              <StepAsk key={ask.id} ask={ask} handle={handle} by={by} missing={tried && open.includes(ask)} />
            ))}
            {photographs ? <Piece of={PHOTOGRAPHS} give={{ visitId: visit.visitId, kinds: photographs }} meanwhile={null} /> : null}
          </div>
          <div className="mt-6 flex flex-col gap-3">
            <Button kind="ink" wide onClick={next}>
              {draft.step + 1 === procedure.steps.length ? words('toCloseOut') : words('nextStep')}
            </Button>
            <div className="flex flex-wrap gap-3">
              {draft.step > 0 ? <Button onClick={() => go(draft.step - 1)}>{words('previousStep')}</Button> : null}
              <Button onClick={() => go(procedure.steps.length)}>{words('stop')}</Button>
              {onTakeBack ? <Button onClick={onTakeBack}>{words('notStarted')}</Button> : null}
            </div>
          </div>
        </div>
        {drawn ? <Piece of={DRAWING} give={{ visit, height: 440 }} /> : null}
      </div>
      {ahead.length > 0 ? <p className="mt-5 text-small text-soft">{words('ahead', { steps: ahead.join(' · ') })}</p> : null}
    </>
  )
}
