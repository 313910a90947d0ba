'use client'
import { type RefObject, useEffect, useRef, useState } from 'react'

/**
 * Width in CSS pixels of the element the returned ref is put on, followed as it changes. Plots are drawn at this width rather than scaled,
 * so that their text keeps its size. `first` stands until the element has been measured (and on the server).
 */
export function useWidth<E extends HTMLElement>(first: number): [RefObject<E | null>, number] {
  const ref = useRef<E>(null)
  const [width, setWidth] = useState(first)
  useEffect(() => {
    const element = ref.current
    if (!element) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width))
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return [ref, width]
}
