'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useStartPlan } from './start-plan.tsx'
import { takenBy } from './taken-by.ts'

type Props = { sheet: DaySheet; sheets: readonly DaySheet[]; onClose: () => void }

/** Someone is ill, the van does not start: has a way round it worked out that disturbs as little as it can. Nothing changes yet. */
export function DisruptionForm({ sheet, sheets, onClose }: Props) {
  const { api } = useSession()
  const choices = useQuery(api.daySheets.crewChoices.queryOptions({ input: { day: sheet.day } }))
  const [choice, setChoice] = useState('off')
  const [missing, setMissing] = useState<ReadonlySet<string>>(new Set())
  const [vehicleId, setVehicleId] = useState('')
  const { begin, busy, failure } = useStartPlan(sheet.day)
  const crewDayId = sheet.id
  const taken = takenBy(sheets, sheet.id)
  const others = (choices.data?.vehicles ?? []).filter((one) => one.id !== sheet.vehicle?.id && !one.away && !taken.has(one.id))
  const submit = () => {
    if (choice === 'vehicle') begin({ kind: 'other-vehicle', crewDayId, vehicleId: vehicleId || null })
    else if (choice === 'some' && missing.size < sheet.members.length) begin({ kind: 'fewer-people', crewDayId, missingIds: [...missing] })
    else begin({ kind: 'sheet-off', crewDayId })
  }
  const broken = {
    value: 'vehicle',
    label: `Everyone, but ${sheet.vehicle?.name} is out of service`,
    hint: 'Visits that the other vehicle can’t carry move to another sheet.',
  }
  return (
    <Dialog
      open
      onClose={onClose}
      title={`${sheet.name} can’t work as planned`}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="ink" busy={busy} disabled={choice === 'some' && missing.size === 0} onClick={submit}>
            Find another plan
          </Button>
        </>
      }
    >
      <ChoiceGroup
        label="Who can work?"
        choices={[
          { value: 'off', label: 'Nobody', hint: 'All its visits that day move to another sheet.' },
          ...(sheet.members.length > 1
            ? [
                {
                  value: 'some',
                  label: 'Some of its people',
                  hint: 'Visits that need more people, or someone cleared for them, move to another sheet.',
                },
              ]
            : []),
          ...(sheet.vehicle ? [broken] : []),
        ]}
        value={choice}
        onChange={setChoice}
      />
      {choice === 'some' ? (
        <fieldset className="mt-4">
          <legend className="font-medium">Who is missing?</legend>
          <p className="text-small text-soft">Taken off this sheet when you accept the plan.</p>
          {sheet.members.map(({ colleagueId, name }) => (
            <Checkbox
              key={colleagueId}
              label={name}
              checked={missing.has(colleagueId)}
              onChange={(event) => {
                const next = new Set(missing)
                if (event.target.checked) next.add(colleagueId)
                else next.delete(colleagueId)
                setMissing(next)
              }}
            />
          ))}
        </fieldset>
      ) : null}
      {choice === 'vehicle' ? (
        <div className="mt-4">
          <Select
            label="Use instead"
            none="no vehicle"
            value={vehicleId}
            hint={others.length === 0 && choices.data ? 'No other vehicle is free that day.' : 'Goes on the sheet when you accept the plan'}
            choices={others.map((one) => ({ value: one.id, label: one.name }))}
            onChange={(event) => setVehicleId(event.target.value)}
          />
        </div>
      ) : null}
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
    </Dialog>
  )
}
