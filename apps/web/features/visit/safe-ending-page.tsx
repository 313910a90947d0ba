'use client'
import type { VisitAskId } from '@almanac/records/procedure-ask'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { StopSign } from '@almanac/ui/stop-sign'
import { formatList } from '@almanac/units/format-list'
import { showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useEffect, useRef } from 'react'
import { PhotographPart } from '@/client/photographs/photograph-part'
import { useSession } from '@/client/providers'
import type { Draft } from './draft.ts'
import type { StandingStop } from './standing-stop.ts'
import type { DraftHandle } from './use-draft.ts'

type Props = { visitId: string; stop: StandingStop; steps: number; handle: DraftHandle }

/** What the page turns into when an answer ends the work: why, what leaves the house safe, how the visit ends. A wrong tap is taken back with one. */
export function SafeEndingPage({ visitId, stop, steps, handle }: Props) {
  const { me } = useSession()
  const words = useWords('stop')
  const outcomes = useWords('outcome')
  const { draft, change } = handle
  const { ending, step, ask } = stop
  const head = useRef<HTMLHeadingElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the heading takes the focus when the page turns, for screen readers and keyboards
  useEffect(() => {
    head.current?.focus()
    window.scrollTo({ top: 0 })
  }, [ending.stop])
  const put = (id: VisitAskId, text: string, more: Partial<Draft> = {}) =>
    change({
      ...more,
      answers: { ...draft.answers, [id]: { text, unit: null, value: null, at: new Date().toISOString() } },
    })
  const left = ending.steps.filter((id) => id !== 'stop-photographed' && draft.answers[id]?.text !== 'yes').length
  const [only, ...others] = ending.outcomes
  const closeOut = () =>
    change({
      step: steps,
      finishedAt: new Date().toISOString(),
      outcome: ending.outcomes.some((one) => one === draft.outcome) ? draft.outcome : others.length === 0 ? (only ?? '') : '',
    })
  const number = showWhole(step + 1, me.company)
  return (
    <>
      <p className="text-small text-soft">{words('stoppedAt', { step: number })}</p>
      <h1 ref={head} tabIndex={-1} className="mt-3 flex items-center gap-3 text-h1 font-semibold text-danger outline-none">
        <StopSign />
        {words('title', { what: words(`what/${ending.stop}`) })}
      </h1>
      <p className="mt-3 mb-5">{words(`say/${ending.stop}`)}</p>
      <div className="flex flex-col gap-3">
        {ending.steps.map((id) => (
          <div key={id} className="border border-edge px-3.5 py-1">
            <Checkbox
              label={words(`do/${id}`)}
              checked={draft.answers[id]?.text === 'yes'}
              onChange={(event) => put(id, event.target.checked ? 'yes' : '')}
            />
          </div>
        ))}
      </div>
      <div className="mt-4">
        <PhotographPart visitId={visitId} kinds={['as-found', 'as-left']} />
      </div>
      <p className="mt-5 border-t border-line pt-4">
        <strong className="font-semibold">
          {words('closesAs', {
            outcomes: formatList(
              ending.outcomes.map((one) => outcomes(one)),
              me.company,
              'disjunction',
            ),
          })}
        </strong>{' '}
        {words('notDone', { done: outcomes('done') })}
      </p>
      <div className="mt-6 flex flex-col gap-3">
        <Button kind="ink" wide disabled={left > 0} onClick={closeOut}>
          {left > 0 ? words('left', { count: showWhole(left, me.company) }) : words('closeOut')}
        </Button>
        <Button wide onClick={() => put(ask, '', { step })}>
          {words('back', { step: number })}
        </Button>
      </div>
    </>
  )
}
