'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

const EVERY_MS = 5000

/** Asks again for the page while the office looks at a photograph; without scripts the link beside it does. */
export function WatchAnswer() {
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), EVERY_MS)
    return () => clearInterval(timer)
  }, [router])
  return null
}
