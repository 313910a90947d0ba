'use client'
import { type KeyboardEvent, useEffect, useRef } from 'react'

/**
 * Arrow keys up and down walk from line to line: over the elements marked `data-line` inside `ref`. When a line that had the focus is gone,
 * because its job was placed or a colleague changed the sheet, the focus goes to the line now standing there and is not lost.
 */
export function useLineKeys<E extends HTMLElement>() {
  const ref = useRef<E>(null)
  const at = useRef(-1)
  const lines = () => [...(ref.current?.querySelectorAll<HTMLElement>('[data-line]') ?? [])]
  const goTo = (index: number) => {
    const all = lines()
    all[Math.max(0, Math.min(index, all.length - 1))]?.focus()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
    if (step === 0 || event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement) return
    const index = lines().indexOf(document.activeElement as HTMLElement)
    event.preventDefault()
    goTo(index < 0 ? Math.max(0, at.current) : index + step)
  }
  const onFocus = () => {
    const index = lines().indexOf(document.activeElement as HTMLElement)
    if (index >= 0) at.current = index
  }
  const onBlur = (event: { relatedTarget: unknown }) => {
    // A blur to somewhere else is a choice; a blur to nowhere may be the line vanishing, which the observer below looks at.
    if (event.relatedTarget) at.current = -1
  }
  useEffect(() => {
    const list = ref.current
    if (!list) return
    const watch = new MutationObserver(() => {
      if (at.current >= 0 && document.activeElement === document.body && !document.querySelector('dialog[open]')) goTo(at.current)
    })
    watch.observe(list, { childList: true, subtree: true })
    return () => watch.disconnect()
  })
  return { ref, onKeyDown, onFocus, onBlur }
}
