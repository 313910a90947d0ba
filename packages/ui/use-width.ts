'use client'
import { type RefObject, useEffect, useRef, useState } from 'react'

/**
 * Width of the element the returned ref is put on, and the size of its text, both in CSS pixels and followed as they change. Plots are
 * drawn at this width rather than scaled, so that their text keeps its size. `first` stands until the element has been measured (and on
 * the server).
 */
export function useWidth<E extends HTMLElement>(first: number): [RefObject<E | null>, number, number] {
  const ref = useRef<E>(null)
  const [box, setBox] = useState({ width: first, fontSize: 16 })
  useEffect(() => {
    const element = ref.current
    if (!element) return
    const watch = new ResizeObserver(([entry]) => {
      if (!entry || entry.contentRect.width === 0) return
      const fontSize = Number.parseFloat(getComputedStyle(element).fontSize) || 16
      setBox({ width: Math.round(entry.contentRect.width), fontSize })
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return [ref, box.width, box.fontSize]
}
