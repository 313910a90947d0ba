'use client'
import { useEffect } from 'react'

/** What is folded away on the screen lies open on paper: the load and the map of the drives. Folded again afterwards. */
export function useOpenOnPaper() {
  useEffect(() => {
    let opened: HTMLDetailsElement[] = []
    const open = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>('details[data-paper]:not([open])')]
      for (const one of opened) one.open = true
    }
    const close = () => {
      for (const one of opened) one.open = false
    }
    addEventListener('beforeprint', open)
    addEventListener('afterprint', close)
    return () => {
      removeEventListener('beforeprint', open)
      removeEventListener('afterprint', close)
    }
  }, [])
}
