import { useEffect, useState } from 'react'

const QUIET_MS = 12_000

/** Whether nothing has moved for so long that a person would wonder; `step` is another with each step forward. */
export function useQuiet(step: string): boolean {
  const [quietAt, setQuietAt] = useState<string | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setQuietAt(step), QUIET_MS)
    return () => clearTimeout(timer)
  }, [step])
  return quietAt === step
}
