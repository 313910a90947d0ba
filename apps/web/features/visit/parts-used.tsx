'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { Button } from '@almanac/ui/button'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { stockRule } from '@almanac/units/amount-kinds'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { v7 } from 'uuid'
import { AmountField } from '@/client/amount-field'
import type { PartLine } from './draft.ts'

type Props = { stock: VisitPage['stock']; parts: PartLine[]; tried: boolean; onChange: (parts: PartLine[]) => void }

/** What was used, with the kit as a first guess. A part used is a fact: it lands even if the shelf says otherwise. */
export function PartsUsed({ stock, parts, tried, onChange }: Props) {
  const words = useWords('closeOut')
  const used = new Set(parts.map((part) => part.stockItemId))
  const [other, setOther] = useState('')
  const addOther = () => {
    onChange([...parts, { key: v7(), stockItemId: null, name: other.trim(), quantity: '1', unit: 'piece' }])
    setOther('')
  }
  const add = (id: string) => {
    const item = stock.find((one) => one.id === id)
    if (item) onChange([...parts, { key: item.id, stockItemId: item.id, name: item.name, quantity: '1', unit: item.unit }])
  }
  return (
    <Section title={words('parts')}>
      <ul className="border-t border-line">
        {parts.map((part) => (
          <li key={part.key} className="flex flex-wrap items-end justify-between gap-3 border-b border-line py-3">
            <span className="grow">
              <AmountField
                label={part.name}
                kind={stockRule(part.unit)}
                tried={tried}
                value={{ text: part.quantity, unit: part.unit, why: part.why ?? '' }}
                onChange={({ text, why }) => onChange(parts.map((one) => (one.key === part.key ? { ...one, quantity: text, why } : one)))}
              />
            </span>
            <Button
              kind="quiet"
              onClick={() => onChange(parts.filter((one) => one.key !== part.key))}
              aria-label={words('takeOut', { part: part.name })}
            >
              {words('notUsed')}
            </Button>
          </li>
        ))}
      </ul>
      <div className="mt-3">
        <Select
          label={words('addPart')}
          value=""
          none={words('fromStores')}
          onChange={(event) => add(event.target.value)}
          choices={stock.filter((item) => !used.has(item.id)).map((item) => ({ value: item.id, label: `${item.name} (${item.unit})` }))}
        />
      </div>
      <div className="mt-3 flex flex-wrap items-end gap-3">
        <span className="grow">
          <TextInput label={words('otherPart')} maxLength={200} value={other} onChange={(event) => setOther(event.target.value)} />
        </span>
        <Button onClick={addOther} disabled={other.trim() === ''}>
          {words('addOther')}
        </Button>
      </div>
    </Section>
  )
}
