import type { Check } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { Section } from '@almanac/ui/section'
import type { ReactNode } from 'react'
import { type DiagnosisAnswers, NUMBER_FIELDS } from './answers.ts'

const PLACES = { telephone: 'on the phone', site: 'at the softener', opened: 'with the valve off' } as const

/** All checks, each folded to a line with its answer; any of them can be answered or changed. */
export function AllChecks({ told, render }: { told: DiagnosisAnswers; render: (id: string) => ReactNode }) {
  return (
    <Section title="All checks">
      <ul className="border-t border-line">
        {CHECKS.map((check) => (
          <li key={check.id} className="border-b border-line">
            <details id={`all-${check.id}`}>
              <summary className="cursor-pointer py-3">
                <span className="mr-3">{check.title}</span>
                <Answer check={check} told={told} />
              </summary>
              <div className="pb-4">
                {render(check.id)}
                <p className="mt-2 text-small text-soft">
                  About {check.minutes} minutes, {PLACES[check.place]}. {check.reason}
                </p>
              </div>
            </details>
          </li>
        ))}
      </ul>
    </Section>
  )
}

function Answer({ check, told }: { check: Check; told: DiagnosisAnswers }) {
  const typed = NUMBER_FIELDS.flatMap(({ field, check: id }) => (id === check.id && told.numbers[field] ? [told.numbers[field]] : []))
  const chosen = check.answers.find((one) => one.value === told.answers[check.id])?.label
  if (typed.length > 0) return <strong className="font-semibold">measured: {typed.join(', ')}</strong>
  return chosen ? <strong className="font-semibold">{chosen}</strong> : <span className="text-soft">not answered</span>
}
