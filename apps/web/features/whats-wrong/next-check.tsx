'use client'
import type { Check } from '@almanac/softener/diagnosis/check-types'
import { answerWords } from '@almanac/softener/diagnosis/diagnosis-words'
import { Button } from '@almanac/ui/button'
import { Section } from '@almanac/ui/section'
import { useWords } from '@almanac/words/use-words'
import { useEffect, useRef } from 'react'
import { NUMBER_FIELDS } from './answers.ts'
import { CheckCautions } from './check-cautions.tsx'

type Props = { check: Check; onAnswer: (value: string) => void; onSkip: () => void }

/** The check worth most now: cautions first, then how it is made, then its answers, one press each. The next one follows in its place. */
export function NextCheck({ check, onAnswer, onSkip }: Props) {
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const title = useRef<HTMLHeadingElement>(null)
  const asked = useRef(check.id)
  useEffect(() => {
    // The pressed answer is gone with its check: whoever works by keyboard or ear goes on at the next one.
    if (asked.current !== check.id) title.current?.focus()
    asked.current = check.id
  }, [check.id])
  const measurable = NUMBER_FIELDS.some((one) => one.check === check.id)
  const measure = () => {
    const all = document.getElementById(`all-${check.id}`)
    for (const part of [all, ...(all?.querySelectorAll('details') ?? [])]) part?.setAttribute('open', '')
    const field = all?.querySelector<HTMLInputElement>('input[inputmode="decimal"]')
    field?.focus()
    field?.scrollIntoView({ block: 'center' })
  }
  return (
    <Section title={words('nextCheck')}>
      <CheckCautions cautions={check.cautions} />
      <h3 ref={title} tabIndex={-1} className="text-lead font-semibold outline-offset-4">
        {said(`check/${check.id}`)}
      </h3>
      <p className="mt-1 text-soft">{said(`check/${check.id}/how`)}</p>
      <div className="mt-3 flex flex-col gap-2.5">
        {check.answers.map(({ value }) => (
          <Button key={value} wide onClick={() => onAnswer(value)}>
            {answerWords(check.id, value, said)}
          </Button>
        ))}
      </div>
      <div className="mt-2 flex flex-wrap gap-x-3">
        {measurable ? (
          <Button kind="quiet" onClick={measure}>
            {words('typeMeasured')}
          </Button>
        ) : null}
        <Button kind="quiet" onClick={onSkip}>
          {words('askAnother')}
        </Button>
      </div>
      <p className="mt-1 text-small text-soft">{said(`check/${check.id}/why`)}</p>
    </Section>
  )
}
