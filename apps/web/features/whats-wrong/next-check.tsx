'use client'
import type { Check } from '@almanac/softener/diagnosis/check-types'
import { Button } from '@almanac/ui/button'
import { Caution } from '@almanac/ui/caution'
import { Section } from '@almanac/ui/section'
import { useEffect, useRef } from 'react'
import { NUMBER_FIELDS } from './answers.ts'

type Props = { check: Check; onAnswer: (value: string) => void; onSkip: () => void }

/** The check worth most now: cautions first, then how it is made, then its answers, one press each. The next one follows in its place. */
export function NextCheck({ check, onAnswer, onSkip }: Props) {
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
    <Section title="Next check">
      {check.cautions.map((caution) => (
        <Caution key={caution.text} kind={caution.kind}>
          {caution.text}
        </Caution>
      ))}
      <h3 ref={title} tabIndex={-1} className="text-lead font-semibold outline-offset-4">
        {check.title}
      </h3>
      <p className="mt-1 text-soft">{check.how}</p>
      <div className="mt-3 flex flex-col gap-2.5">
        {check.answers.map(({ value, label }) => (
          <Button key={value} wide onClick={() => onAnswer(value)}>
            {label}
          </Button>
        ))}
      </div>
      <div className="mt-2 flex flex-wrap gap-x-3">
        {measurable ? (
          <Button kind="quiet" onClick={measure}>
            Type what was measured
          </Button>
        ) : null}
        <Button kind="quiet" onClick={onSkip}>
          Don’t know, ask another
        </Button>
      </div>
      <p className="mt-1 text-small text-soft">{check.reason}</p>
    </Section>
  )
}
