'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { peopleWords } from '@/client/job-words'
import { useStartPlan } from './start-plan.tsx'

/** Someone is ill, the van does not start: has a way round it worked out that disturbs as little as it can. Nothing changes yet. */
export function Mishap({ sheet, onClose }: { sheet: DaySheet; onClose: () => void }) {
  const [choice, setChoice] = useState('off')
  const { begin, busy, failure } = useStartPlan(sheet.day)
  const fewer = Array.from({ length: Math.max(0, sheet.members.length - 1) }, (_, n) => sheet.members.length - 1 - n)
  const submit = () =>
    begin(
      choice === 'off' ? { kind: 'sheet-off', crewDayId: sheet.id } : { kind: 'fewer-people', crewDayId: sheet.id, people: Number(choice) },
    )
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
          { value: 'off', label: 'Nobody, or no vehicle', hint: 'All its visits of the day need another place.' },
          ...fewer.map((people) => ({
            value: String(people),
            label: `Only ${peopleWords(people)}`,
            hint: 'Visits that need more need another place.',
          })),
        ]}
        value={choice}
        onChange={setChoice}
      />
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
    </Dialog>
  )
}
