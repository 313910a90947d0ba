import { readAmount } from '@almanac/units/read-amount'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import type { AmountText } from '@/client/amounts'
import { useLocale } from '@/client/use-locale'
import { useMoney } from '@/client/use-money'

const NAMES = ['rebed', 'clean', 'unit'] as const
export type WhatIfName = (typeof NAMES)[number]
/** A price as typed, as its field takes it, and in minor units: null where it is empty or cannot be read, which the field then says. */
export type WhatIf = Record<
  WhatIfName,
  { field: { kind: ReturnType<typeof useMoney>['rule']; value: AmountText; onChange: (value: AmountText) => void }; minor: number | null }
>

/** Prices typed on this page, as typed; they stand in the address, so that the answer can be shared, and are kept nowhere else. */
export function useWhatIf(): WhatIf {
  const money = useMoney()
  const locale = useLocale()
  const search = useSearchParams()
  const router = useRouter()
  const path = usePathname()
  const [typed, setTyped] = useState(() => ({
    rebed: search.get('rebed') ?? '',
    clean: search.get('clean') ?? '',
    unit: search.get('unit') ?? '',
  }))
  const change = (name: WhatIfName, text: string) => {
    const next = { ...typed, [name]: text }
    setTyped(next)
    const query = new URLSearchParams(NAMES.flatMap((one) => (next[one].trim() === '' ? [] : [[one, next[one].trim()]])))
    router.replace(query.size ? `${path}?${query}` : path, { scroll: false })
  }
  const price = (name: WhatIfName): WhatIf[WhatIfName] => {
    const reading = readAmount(money.rule, typed[name], { locale })
    const value = { text: typed[name], unit: money.currency, why: '' }
    return {
      field: { kind: money.rule, value, onChange: ({ text }) => change(name, text) },
      minor: reading.state === 'read' ? money.minorOf(reading.value) : null,
    }
  }
  return { rebed: price('rebed'), clean: price('clean'), unit: price('unit') }
}
