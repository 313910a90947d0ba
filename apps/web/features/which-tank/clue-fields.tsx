import type { TankIdentity } from '@almanac/softener/identify/identify-tank'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { TextInput } from '@almanac/ui/text-input'
import type { ReactNode } from 'react'
import { AmountField } from '@/client/amount-field'
import { type ClueTexts, LENGTH_CLUES, type LengthField, type ReadClues, type Sleeve } from './clue-texts.ts'
import { FIELD_OF_ASK } from './size-words.ts'

type Props = { texts: ClueTexts; read: ReadClues; identity: TankIdentity; change: (change: Partial<ClueTexts>) => void }

const LENGTHS: readonly [LengthField, string, string][] = [
  ['round', 'Around the tank', 'Tape or string at half its height, level, under any sleeve.'],
  ['rim', 'Floor to the rim, without the valve', 'Straight up to where the tank ends and the valve begins.'],
  ['top', 'Floor to the top of the valve', 'If you can’t see the rim.'],
]
const MORE: readonly [LengthField, string, string][] = [
  ['across', 'Across the tank', 'Hold two books against its sides and measure between them.'],
  ['depth', 'Depth of the resin', 'With the valve off: from the top of the bed down to the gravel.'],
  ['hole', 'Opening at the top', 'With the valve off: 2½ or 4 in, about 6 or 10 cm.'],
]

/** What the caller can read or measure; all of it may be left empty. */
export function ClueFields({ texts, read, identity, change }: Props) {
  const asked = identity.next[0] ? FIELD_OF_ASK[identity.next[0].id] : null
  const length = ([field, label, hint]: (typeof LENGTHS)[number]) => {
    const problem = [...identity.problems, ...identity.odd].find((one) => one.clue === LENGTH_CLUES[field])
    return (
      <Asked key={field} now={asked === field}>
        <AmountField
          id={field}
          label={label}
          hint={hint}
          kind="tankMeasure"
          unitWords={texts.unit}
          tried
          error={problem?.sentence}
          value={{ text: texts[field], unit: texts.unit, why: '' }}
          onChange={({ text }) => change({ [field]: text })}
        />
      </Asked>
    )
  }
  const written = [...identity.problems, ...identity.odd].find((one) => /^(written|nominal|resin)/.test(one.clue))
  return (
    <div className="flex flex-col gap-5 [&_input]:scroll-mt-48">
      <Asked now={asked === 'label'}>
        <TextInput
          id="label"
          label="What the label or the notes say"
          hint="A size or a rating: 10x54, 1054, 48,000 grain, 48k, 1.5 cu ft, 42 L"
          autoComplete="off"
          autoCapitalize="off"
          maxLength={200}
          value={texts.label}
          error={read.labelError ?? written?.sentence}
          onChange={(event) => change({ label: event.target.value })}
        />
        {read.labelNotes.length > 0 ? <p className="mt-1 text-small text-soft">{read.labelNotes.join(' ')}</p> : null}
      </Asked>
      <ChoiceGroup
        label="The tape is in"
        inline
        value={texts.unit}
        choices={[
          { value: 'in', label: 'inches' },
          { value: 'cm', label: 'cm' },
        ]}
        onChange={(unit) => change({ unit: unit === 'cm' ? 'cm' : 'in' })}
      />
      {LENGTHS.map(length)}
      <Asked now={asked === 'sleeve'}>
        <div id="sleeve" tabIndex={-1} className="scroll-mt-48 outline-none">
          <ChoiceGroup
            label="Did the tape go around a sleeve or shell?"
            inline
            value={texts.sleeve}
            choices={[
              { value: '', label: 'not known' },
              { value: 'no', label: 'no, bare tank' },
              { value: 'yes', label: 'yes' },
            ]}
            onChange={(sleeve) => change({ sleeve: sleeve as Sleeve })}
          />
        </div>
      </Asked>
      <details open={MORE.some(([field]) => texts[field] !== '') || asked === 'across'}>
        <summary className="w-fit cursor-pointer py-3 font-medium">More that could be measured</summary>
        <div className="mt-3 flex flex-col gap-5">{MORE.map(length)}</div>
      </details>
    </div>
  )
}

/** Marks the field that is asked for now, by a line and a word. */
function Asked({ now, children }: { now: boolean; children: ReactNode }) {
  return (
    <div className={now ? 'border-l-4 border-water pl-3' : 'pl-0'}>
      {now ? <p className="text-small font-semibold text-water">Next</p> : null}
      {children}
    </div>
  )
}
