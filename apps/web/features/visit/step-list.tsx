'use client'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Dialog } from '@almanac/ui/dialog'
import { Shape } from '@almanac/ui/shape'
import { showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import type { Draft } from './draft.ts'
import { stepMark } from './step-marks.ts'
import type { VisitReading } from './visit-amounts.ts'

type Props = { procedure: Procedure; draft: Draft; by: VisitReading; onGo: (step: number) => void; onClose: () => void }

/** All steps with what was answered; a touch goes to one. */
export function StepList({ procedure, draft, by, onGo, onClose }: Props) {
  const { me } = useSession()
  const words = useWords('visit')
  const common = useWords('common')
  const marks = procedure.steps.map((step) => stepMark(step, draft, by))
  const count = (of: number) => showWhole(of, me.company)
  return (
    <Dialog
      open
      place="margin"
      onClose={onClose}
      title={words('stepsDone', { done: count(marks.filter((one) => one.done).length), count: count(marks.length) })}
    >
      <ol className="-mx-5 -mt-4">
        {procedure.steps.map((step, at) => {
          const { done = false, said = '' } = marks[at] ?? {}
          const here = at === draft.step
          return (
            <li key={step.id}>
              <button
                type="button"
                aria-current={here ? 'step' : undefined}
                onClick={() => onGo(at)}
                className={`flex min-h-13 w-full items-center gap-3 border-b px-5 py-2 text-left ${here ? 'border-ink bg-ink text-paper' : 'border-line hover:bg-wash'}`}
              >
                <span className={`flex w-7 shrink-0 ${done && !here ? 'text-done' : ''}`}>
                  {done ? (
                    <>
                      <Shape name="tick" size={16} />
                      <span className="sr-only">{common('done')}</span>
                    </>
                  ) : (
                    count(at + 1)
                  )}
                </span>
                <span className="grow">{step.title}</span>
                <strong className="max-w-[45%] shrink-0 text-right font-semibold">{said}</strong>
              </button>
            </li>
          )
        })}
      </ol>
    </Dialog>
  )
}
