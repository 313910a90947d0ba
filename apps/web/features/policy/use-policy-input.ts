'use client'
import type { PolicyInput } from '@almanac/contract/forecasts'
import { oneOf } from '@almanac/records/choices'
import { resinKinds } from '@almanac/records/resin-kind'
import { AMOUNT_KINDS, type AmountRule, moneyRule } from '@almanac/units/amount-kinds'
import { minorDigits } from '@almanac/units/money'
import { readAmount } from '@almanac/units/read-amount'
import { readNumber } from '@almanac/units/read-number'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { useLocale } from '@/client/use-locale'
import { useMoney } from '@/client/use-money'

export type PolicyQuery = Partial<Record<'supply' | 'resin' | 'planned' | 'failure' | 'beads' | 'share' | 'age', string>>

const MOST_COST = 1_000_000
export type CostName = 'planned' | 'failure' | 'beads' | 'share'

/** What each cost of the question may be: money, and a share in percent. */
export function costRules(currency: string): Record<CostName, AmountRule> {
  const cost = moneyRule(currency, minorDigits(currency), MOST_COST)
  return { planned: { ...cost, above: true }, failure: cost, beads: cost, share: AMOUNT_KINDS.share }
}

/** The question in the address, so that an answer can be shared; amounts in the currency's main unit, shares in percent. */
export function usePolicyInput(): { query: PolicyQuery; input: PolicyInput; change: (part: PolicyQuery) => void } {
  const search = useSearchParams()
  const locale = useLocale()
  const { currency, minorOf } = useMoney()
  const router = useRouter()
  const path = usePathname()
  const query: PolicyQuery = Object.fromEntries(search.entries())
  const change = (part: PolicyQuery) => {
    const next = new URLSearchParams()
    for (const [key, value] of Object.entries({ ...query, ...part })) if (value) next.set(key, value)
    router.replace(next.size ? `${path}?${next}` : path, { scroll: false })
  }
  const rules = costRules(currency)
  const read = (name: CostName) => {
    const reading = readAmount(rules[name], query[name] ?? '', { locale })
    return reading.state === 'read' ? reading.value : undefined
  }
  const minor = (name: CostName) => {
    const value = read(name)
    return value === undefined ? undefined : minorOf(value)
  }
  const share = read('share')
  const age = readNumber(query.age ?? '')
  const input: PolicyInput = {
    waterSupplyId: query.supply,
    resinKind: oneOf(resinKinds, query.resin) ?? 'gel-8',
    plannedMinor: minor('planned'),
    failureMinor: minor('failure'),
    beadsMinor: minor('beads'),
    beadsShare: share === undefined ? undefined : share / 100,
    fixedAgeYears: age !== null && age >= 1 && age <= 40 ? Math.round(age) : 12,
  }
  return { query, input, change }
}
