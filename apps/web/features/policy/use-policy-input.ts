'use client'
import type { PolicyInput } from '@almanac/contract/forecasts'
import { oneOf } from '@almanac/records/choices'
import { resinKinds } from '@almanac/records/resin-kind'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'

export type PolicyQuery = Partial<Record<'supply' | 'resin' | 'planned' | 'failure' | 'beads' | 'share' | 'age', string>>

const amount = (text: string | undefined, least: number, most: number, times: number) => {
  const value = text === undefined || text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'))
  return value >= least && value <= most ? Math.round(value * times) : undefined
}

/** The question in the address, so that an answer can be shared; amounts in the currency's main unit, shares in percent. */
export function usePolicyInput(minor: number): { query: PolicyQuery; input: PolicyInput; change: (part: PolicyQuery) => void } {
  const search = useSearchParams()
  const router = useRouter()
  const path = usePathname()
  const query: PolicyQuery = Object.fromEntries(search.entries())
  const change = (part: PolicyQuery) => {
    const next = new URLSearchParams()
    for (const [key, value] of Object.entries({ ...query, ...part })) if (value) next.set(key, value)
    router.replace(next.size ? `${path}?${next}` : path, { scroll: false })
  }
  const share = amount(query.share, 0, 100, 10)
  const input: PolicyInput = {
    waterSupplyId: query.supply,
    resinKind: oneOf(resinKinds, query.resin) ?? 'gel-8',
    plannedMinor: amount(query.planned, 0.01, 1_000_000, minor),
    failureMinor: amount(query.failure, 0, 1_000_000, minor),
    beadsMinor: amount(query.beads, 0, 1_000_000, minor),
    beadsShare: share === undefined ? undefined : share / 1000,
    fixedAgeYears: amount(query.age, 1, 40, 1) ?? 12,
  }
  return { query, input, change }
}
