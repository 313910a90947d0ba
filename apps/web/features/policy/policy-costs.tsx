'use client'
import type { Policy } from '@almanac/contract/forecasts'
import { Button } from '@almanac/ui/button'
import { numberText } from '@almanac/units/read-number'
import type { FormEvent } from 'react'
import { AmountField } from '@/client/amount-field'
import { useAmounts } from '@/client/use-amounts'
import { useLocale } from '@/client/use-locale'
import { type CostName, costRules, type PolicyQuery } from './use-policy-input.ts'

type Props = { policy: Policy; currency: string; minor: number; change: (part: PolicyQuery) => void }

const FROM: Record<string, string> = {
  asked: 'as you typed it here',
  settings: 'from Company settings',
  records: 'from your own records',
  example: 'an example, not yours: type your own',
}

/** The costs the answer goes by, each saying where it came from; typed ones stand in the address and change nothing stored. */
export function PolicyCosts({ policy, currency, minor, change }: Props) {
  const { costs, costSources } = policy
  const locale = useLocale()
  const fields: readonly { key: CostName; label: string; value: number; from: string | undefined }[] = [
    { key: 'planned', label: 'A planned rebed', value: costs.plannedMinor / minor, from: costSources.plannedMinor },
    {
      key: 'failure',
      label: 'A rebed after a failure, everything',
      value: costs.failureMinor / minor,
      from: costSources.failureMinor,
    },
    { key: 'beads', label: 'Beads in the plumbing, extra', value: costs.beadsMinor / minor, from: costSources.beadsMinor },
    { key: 'share', label: 'Failures with beads in the plumbing', value: costs.beadsShare * 100, from: costSources.beadsShare },
  ]
  const start = Object.fromEntries(fields.map(({ key, value }) => [key, { text: numberText(value, locale, 2) }]))
  const { field, read, typed } = useAmounts(costRules(currency), { start })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (read() === null) return
    change(
      Object.fromEntries(fields.map(({ key }) => [key, typed[key].text]).filter(([key, text]) => text !== start[key as CostName]?.text)),
    )
  }
  return (
    <form onSubmit={submit} className="flex flex-wrap items-end gap-x-6 gap-y-4">
      {fields.map(({ key, label, from }) => (
        <AmountField key={key} label={label} hint={FROM[from ?? 'example']} {...field(key)} />
      ))}
      <Button type="submit">Recalculate</Button>
    </form>
  )
}
