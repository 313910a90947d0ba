import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'

const NAMES = ['rebed', 'clean', 'unit'] as const
export type WhatIfName = (typeof NAMES)[number]
export type WhatIf = Record<WhatIfName, string>

/** Prices typed on this page, as typed; they stand in the address, so that the answer can be shared, and are kept nowhere else. */
export function useWhatIf(): [WhatIf, (name: WhatIfName, text: string) => void] {
  const search = useSearchParams()
  const router = useRouter()
  const path = usePathname()
  const [typed, setTyped] = useState<WhatIf>(() => ({
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
  return [typed, change]
}
