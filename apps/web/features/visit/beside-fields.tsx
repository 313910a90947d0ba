'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { followUpKinds } from '@almanac/records/beside-visit'
import { renewsBed } from '@almanac/records/job-kind'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { TimeInput } from '@almanac/ui/time-input'
import { useWords } from '@almanac/words/use-words'
import { type Draft, entered, type ShownDraft } from './draft.ts'

type Props = { visit: VisitPage; shown: ShownDraft; change: (part: Partial<Draft>) => void }

/** When the work was, who else was there, another visit that is needed and what was agreed with the customer: each may stay as it is. */
export function BesideFields({ visit, shown, change }: Props) {
  const words = useWords('closeOut')
  const kinds = useWords('jobKind')
  const crew = visit.people.join(', ')
  // A rebed or an exchange is of a bed that is there.
  const offered = followUpKinds.filter((kind) => visit.bed !== null || !renewsBed(kind))
  return (
    <>
      <Section title={words('hours')}>
        <div className="mb-4 flex flex-wrap items-end gap-6">
          <TimeInput
            label={words('began')}
            step={60}
            value={shown.beganClock}
            onChange={(event) => change({ beganClock: entered(event.target.value) })}
          />
          <TimeInput
            label={words('ended')}
            hint={words('endedHint')}
            step={60}
            value={shown.endedClock}
            onChange={(event) => change({ endedClock: entered(event.target.value) })}
          />
        </div>
        <TextInput
          label={words('others')}
          hint={crew ? words('othersHint', { crew }) : words('othersHintAlone')}
          maxLength={200}
          value={shown.others}
          onChange={(event) => change({ others: event.target.value })}
        />
      </Section>
      <TextArea
        label={words('extra')}
        hint={words('extraHint')}
        maxLength={1000}
        value={shown.extraWork}
        onChange={(event) => change({ extraWork: event.target.value })}
      />
      {shown.extraWork.trim() ? (
        <TextInput
          label={words('extraWith')}
          required
          maxLength={120}
          value={shown.extraWith}
          onChange={(event) => change({ extraWith: event.target.value })}
        />
      ) : null}
      <Select
        label={words('nextVisit')}
        value={shown.followUpKind}
        none={words('noNextVisit')}
        onChange={(event) => change({ followUpKind: event.target.value })}
        choices={offered.map((kind) => ({ value: kind, label: kinds(kind) }))}
      />
      {shown.followUpKind ? (
        <TextArea
          label={words('nextVisitWhat')}
          required
          maxLength={500}
          value={shown.followUpWhat}
          onChange={(event) => change({ followUpWhat: event.target.value })}
        />
      ) : null}
    </>
  )
}
