'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { peopleWords } from '@/client/job-words'
import { useSession } from '@/client/providers'
import { useStartPlan } from './start-plan.tsx'
import { takenBy } from './taken-by.ts'

type Props = { sheet: DaySheet; sheets: readonly DaySheet[]; onClose: () => void }

/** Someone is ill, the van does not start: has a way round it worked out that disturbs as little as it can. Nothing changes yet. */
export function Mishap({ sheet, sheets, onClose }: Props) {
  const { api } = useSession()
  const choices = useQuery(api.daySheets.crewChoices.queryOptions({ input: { day: sheet.day } }))
  const [choice, setChoice] = useState('off')
  const [vehicleId, setVehicleId] = useState('')
  const { begin, busy, failure } = useStartPlan(sheet.day)
  const crewDayId = sheet.id
  const fewer = Array.from({ length: Math.max(0, sheet.members.length - 1) }, (_, n) => sheet.members.length - 1 - n)
  const taken = takenBy(sheets, sheet.id)
  const others = (choices.data?.vehicles ?? []).filter((one) => one.id !== sheet.vehicle?.id && !one.away && !taken.has(one.id))
  const submit = () => {
    if (choice === 'off') begin({ kind: 'sheet-off', crewDayId })
    else if (choice === 'vehicle') begin({ kind: 'other-vehicle', crewDayId, vehicleId: vehicleId || null })
    else begin({ kind: 'fewer-people', crewDayId, people: Number(choice) })
  }
  const broken = {
    value: 'vehicle',
    label: `Everyone, but ${sheet.vehicle?.name} is broken`,
    hint: 'What the other vehicle cannot carry needs another place.',
  }
  return (
    <Dialog
      open
      onClose={onClose}
      title={`${sheet.name} cannot work as planned`}
      actions={
        <>
          <Button onClick={onClose}>Leave it</Button>
          <Button kind="ink" busy={busy} onClick={submit}>
            Look for a way round
          </Button>
        </>
      }
    >
      <ChoiceGroup
        label="What is left of this crew?"
        choices={[
          { value: 'off', label: 'Nobody', hint: 'All its visits of the day need another place.' },
          ...fewer.map((people) => ({
            value: String(people),
            label: `Only ${peopleWords(people)}`,
            hint: 'Visits that need more need another place.',
          })),
          ...(sheet.vehicle ? [broken] : []),
        ]}
        value={choice}
        onChange={setChoice}
      />
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
