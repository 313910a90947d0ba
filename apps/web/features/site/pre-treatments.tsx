'use client'
import type { SiteSoftener } from '@almanac/contract/sites'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { factSources, factSourceWords } from '@almanac/records/fact-source'
import { preTreatmentKinds, preTreatmentKindWords } from '@almanac/records/pre-treatment-kind'
import { Button } from '@almanac/ui/button'
import { DayInput } from '@almanac/ui/day-input'
import { useDisplay } from '@almanac/ui/display'
import { Select } from '@almanac/ui/select'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useSourceText } from '@/client/use-source-text'
import { useDayField, useToday } from '@/client/use-today'

type PreTreatment = SiteSoftener['preTreatments'][number]

/** What’s ahead of the softener, and since when; carbon keeps the disinfectant from the beds. */
export function PreTreatments({ softener, mayChange }: { softener: SiteSoftener; mayChange: boolean }) {
  const display = useDisplay()
  const words = useWords('site')
  const sourceText = useSourceText()
  const [ending, setEnding] = useState<PreTreatment | null>(null)
  return (
    <>
      {softener.preTreatments.length > 0 ? (
        <ul className="mt-2 text-small">
          {softener.preTreatments.map((one) => (
            <li key={one.id} className="flex flex-wrap items-center gap-x-3">
              <span className={one.toDay ? 'text-soft' : ''}>
                {words(`ahead/${one.kind}`)}
                {one.fromDay ? ` ${words('since', { day: formatDay(one.fromDay, display) })}` : ''}
                {one.toDay ? `, ${words('removed', { day: formatDay(one.toDay, display) })}` : ''}
                <span className="text-soft"> ({sourceText(one.source)})</span>
              </span>
              {mayChange && !one.toDay ? (
                <Button kind="quiet" onClick={() => setEnding(one)}>
                  {words('takenOut')}
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
      ) : null}
      {ending ? <EndPreTreatment one={ending} onClose={() => setEnding(null)} /> : null}
    </>
  )
}

export function PreTreatmentForm({ softenerId, onClose }: { softenerId: string; onClose: () => void }) {
  const { api } = useSession()
  const today = useToday()
  const { values, field } = useFields(() => ({ kind: 'carbon', fromDay: '', source: 'call' }))
  const add = useCommand(api.sites.addPreTreatment.mutationOptions(), { onDone: onClose })
  const send = () =>
    add.send({
      softenerId,
      kind: oneOf(preTreatmentKinds, values.kind) ?? 'carbon',
      fromDay: values.fromDay || null,
      source: oneOf(factSources, values.source) ?? 'call',
    })
  return (
    <FormDialog
      title="What’s ahead of the softener"
      lead="Carbon removes chlorine and chloramine before they reach the bed, so the bed lasts longer."
      onClose={onClose}
      onSubmit={send}
      busy={add.isPending}
      error={add.error}
    >
      <Select label="Kind" choices={choicesOf(preTreatmentKinds, preTreatmentKindWords)} {...field('kind')} />
      <DayInput label="Since" hint="Leave blank if unknown" max={today} {...field('fromDay')} />
      <Select label="How you know" choices={choicesOf(factSources, factSourceWords)} {...field('source')} />
    </FormDialog>
  )
}

function EndPreTreatment({ one, onClose }: { one: PreTreatment; onClose: () => void }) {
  const { api } = useSession()
  const on = useDayField()
  const end = useCommand(api.sites.endPreTreatment.mutationOptions(), { onDone: onClose })
  return (
    <FormDialog
      title="Taken out"
      lead="What it removed until then stays on record."
      onClose={onClose}
      onSubmit={() => end.send({ preTreatmentId: one.id, version: one.version, toDay: on.day })}
      busy={end.isPending}
      error={end.error}
    >
      <DayInput label="On" required max={on.today} {...on.field} />
    </FormDialog>
  )
}
