'use client'
import type { WeekOfTowns } from '@almanac/contract/week'
import { jobKinds } from '@almanac/records/job-kind'
import { useDisplay } from '@almanac/ui/display'
import { lengthChoices } from '@/client/job-lengths'
import { KIND_PHRASES, peopleWords } from './week-words.ts'

const MOST_PEOPLE = 4

type Change = (changes: Record<string, string>) => void

function Word({
  label,
  value,
  choices,
  onChange,
}: {
  label: string
  value: string
  choices: readonly { value: string; label: string }[]
  onChange: (value: string) => void
}) {
  return (
    <select
      aria-label={label}
      value={value}
      onChange={(event) => onChange(event.target.value)}
      className="min-h-control max-w-full border-b-2 border-ink bg-transparent font-semibold hover:bg-wash [field-sizing:content]"
    >
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  )
}

/** The heading is the question, and each underlined word of it a choice. */
export function WeekQuestion({ data, onChange }: { data: WeekOfTowns; onChange: Change }) {
  const display = useDisplay()
  const towns = [...data.towns.map((one) => one.town), ...data.otherTowns].sort((a, b) => a.localeCompare(b))
  return (
    <span className="flex flex-wrap items-baseline gap-x-2">
      When can we be in
      <Word
        label="Town"
        value={data.town ?? ''}
        choices={towns.map((town) => ({ value: town, label: town }))}
        onChange={(town) => onChange({ town })}
      />
      for
      <Word
        label="Work"
        value={data.kind}
        choices={jobKinds.map((kind) => ({ value: kind, label: KIND_PHRASES[kind] }))}
        onChange={(kind) => onChange({ kind, people: '', minutes: '' })}
      />
      with
      <Word
        label="People"
        value={String(data.people)}
        choices={Array.from({ length: Math.max(MOST_PEOPLE, data.people) }, (_, n) => ({
          value: String(n + 1),
          label: peopleWords(n + 1),
        }))}
        onChange={(people) => onChange({ people })}
      />
      for
      <Word
        label="Length"
        value={String(data.minutes)}
        choices={lengthChoices(data.minutes, display).map(({ value, label }) => ({ value, label: `${label}?` }))}
        onChange={(minutes) => onChange({ minutes })}
      />
    </span>
  )
}
