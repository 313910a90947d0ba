'use client'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'

/** How long to wait after a key before looking, ms: long enough that a word typed fast is looked up once. */
const PAUSE_MS = 150

/** What is searched for, kept in the address so that one can come back to it; the box answers at once, the look-up a moment later. */
export function useSearch(): { text: string; searched: string; type: (text: string) => void } {
  const router = useRouter()
  const path = usePathname()
  const searched = useSearchParams().get('q') ?? ''
  const [text, setText] = useState(searched)
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined)
  useEffect(() => {
    // Whoever follows a link has left: a look-up that comes after would take the page back to the list.
    const leave = (event: MouseEvent) => {
      if (event.target instanceof Element && event.target.closest('a')) clearTimeout(waiting.current)
    }
    document.addEventListener('click', leave, true)
    return () => {
      document.removeEventListener('click', leave, true)
      clearTimeout(waiting.current)
    }
  }, [])
  const type = (next: string) => {
    setText(next)
    clearTimeout(waiting.current)
    waiting.current = setTimeout(() => {
      const q = next.trim()
      router.replace(q ? `${path}?q=${encodeURIComponent(q)}` : path, { scroll: false })
    }, PAUSE_MS)
  }
  return { text, searched, type }
}
