import type { Check } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { answerWords } from '@almanac/softener/diagnosis/diagnosis-words'
import { Section } from '@almanac/ui/section'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { type DiagnosisAnswers, NUMBER_FIELDS } from './answers.ts'

/** All checks, each folded to a line with its answer; any of them can be answered or changed. */
export function AllChecks({ told, render }: { told: DiagnosisAnswers; render: (id: string) => ReactNode }) {
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  return (
    <Section title={words('allChecks')}>
      <ul className="border-t border-line">
        {CHECKS.map((check) => (
          <li key={check.id} className="border-b border-line">
            <details id={`all-${check.id}`}>
              <summary className="cursor-pointer py-3">
                <span className="mr-3">{said(`check/${check.id}`)}</span>
                <Answer check={check} told={told} />
              </summary>
              <div className="pb-4">
                {render(check.id)}
                <p className="mt-2 text-small text-soft">
                  {check.days ? `${words('takesDays', { count: String(check.days) })} ` : ''}
                  {words(`place/${check.place}`, { count: String(check.minutes), why: said(`check/${check.id}/why`) })}
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
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const typed = NUMBER_FIELDS.flatMap(({ field, check: id }) => (id === check.id && told.numbers[field] ? [told.numbers[field]] : []))
  const chosen = check.answers.find((one) => one.value === told.answers[check.id])
  if (typed.length > 0) return <strong className="font-semibold">{words('measured', { values: typed.join(', ') })}</strong>
  if (!chosen) return <span className="text-soft">{words('notAnswered')}</span>
  return <strong className="font-semibold">{answerWords(check.id, chosen.value, said)}</strong>
}
