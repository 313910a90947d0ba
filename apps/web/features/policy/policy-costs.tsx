'use client'
import type { Policy } from '@almanac/contract/forecasts'
import { Button } from '@almanac/ui/button'
import { NumberInput } from '@almanac/ui/number-input'
import { type FormEvent, useState } from 'react'
import type { PolicyQuery } from './use-policy-input.ts'

type Props = { policy: Policy; currency: string; minor: number; change: (part: PolicyQuery) => void }

const FROM: Record<string, string> = {
  asked: 'as you typed it here',
  settings: 'from your figures',
  records: 'from your own records',
  example: 'an example, not yours: type your own',
}

/** The costs the answer goes by, each saying where it came from; typed ones stand in the address and change nothing stored. */
export function PolicyCosts({ policy, currency, minor, change }: Props) {
  const { costs, costSources } = policy
  const [typed, setTyped] = useState<PolicyQuery>({})
  const fields = [
    { key: 'planned', label: 'A planned rebed', unit: currency, value: costs.plannedMinor / minor, from: costSources.plannedMinor },
    {
      key: 'failure',
      label: 'A rebed after a failure, all in',
      unit: currency,
      value: costs.failureMinor / minor,
      from: costSources.failureMinor,
    },
    { key: 'beads', label: 'Beads in the plumbing, on top', unit: currency, value: costs.beadsMinor / minor, from: costSources.beadsMinor },
    { key: 'share', label: 'Failures with beads in the plumbing', unit: '%', value: costs.beadsShare * 100, from: costSources.beadsShare },
  ] as const
  const submit = (event: FormEvent) => {
    event.preventDefault()
    change(typed)
  }
  return (
    <form onSubmit={submit} className="flex flex-wrap items-end gap-x-6 gap-y-4">
      {fields.map((field) => (
        <NumberInput
          key={field.key}
          label={field.label}
          hint={FROM[field.from ?? 'example']}
          unit={field.unit}
          value={typed[field.key] ?? String(Math.round(field.value * 100) / 100)}
          onChange={(event) => setTyped({ ...typed, [field.key]: event.target.value })}
        />
      ))}
      <Button type="submit">Work it out</Button>
    </form>
  )
}
