import type { TankIdentity } from '@almanac/softener/identify/identify-tank'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { AmountField } from '@/client/amount-field'
import { type ClueTexts, LENGTH_CLUES, type LengthField, type ReadClues, type Sleeve } from './clue-texts.ts'
import { FIELD_OF_ASK } from './size-words.ts'

type Props = { texts: ClueTexts; read: ReadClues; identity: TankIdentity; change: (change: Partial<ClueTexts>) => void }

const LENGTHS: readonly LengthField[] = ['round', 'rim', 'top']
const MORE: readonly LengthField[] = ['across', 'depth', 'hole']

/** What the caller can read or measure; all of it may be left empty. */
export function ClueFields({ texts, read, identity, change }: Props) {
  const words = useWords('whichTank')
  const asked = identity.next[0] ? FIELD_OF_ASK[identity.next[0].id] : null
  const length = (field: LengthField) => {
    const problem = [...identity.problems, ...identity.odd].find((one) => one.clue === LENGTH_CLUES[field])
    return (
      <Asked key={field} now={asked === field}>
        <AmountField
          id={field}
          label={words(`field/${field}`)}
          hint={words(`field/${field}/hint`)}
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
          label={words('field/label')}
          hint={words('field/label/hint')}
          autoComplete="off"
          autoCapitalize="off"
          maxLength={200}
          value={texts.label}
          error={read.labelError ?? written?.sentence}
          onChange={(event) => change({ label: event.target.value })}
        />
        {read.labelNote ? <p className="mt-1 text-small text-soft">{read.labelNote}</p> : null}
      </Asked>
      <ChoiceGroup
        label={words('tapeIn')}
        inline
        value={texts.unit}
        choices={[
          { value: 'in', label: words('inches') },
          { value: 'cm', label: 'cm' },
        ]}
        onChange={(unit) => change({ unit: unit === 'cm' ? 'cm' : 'in' })}
      />
      {LENGTHS.map(length)}
      <Asked now={asked === 'sleeve'}>
        <div id="sleeve" tabIndex={-1} className="scroll-mt-48 outline-none">
          <ChoiceGroup
            label={words('sleeve')}
            inline
            value={texts.sleeve}
            choices={[
              { value: '', label: words('sleeve/unknown') },
              { value: 'no', label: words('sleeve/no') },
              { value: 'yes', label: words('sleeve/yes') },
            ]}
            onChange={(sleeve) => change({ sleeve: sleeve as Sleeve })}
          />
        </div>
      </Asked>
      <details open={MORE.some((field) => texts[field] !== '') || asked === 'across'}>
        <summary className="w-fit cursor-pointer py-3 font-medium">{words('more')}</summary>
        <div className="mt-3 flex flex-col gap-5">{MORE.map(length)}</div>
      </details>
    </div>
  )
}

/** Marks the field that is asked for now, by a line and a word. */
function Asked({ now, children }: { now: boolean; children: ReactNode }) {
  const words = useWords('whichTank')
  return (
    <div className={now ? 'border-l-4 border-water pl-3' : 'pl-0'}>
      {now ? <p className="text-small font-semibold text-water">{words('next')}</p> : null}
      {children}
    </div>
  )
}
