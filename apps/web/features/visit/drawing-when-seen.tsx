'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { useEffect, useRef, useState } from 'react'
import { Piece } from '@/client/piece'
import { DRAWING } from './late-pieces.ts'

const HEIGHT = 560
/** It comes before somebody has scrolled so far. */
const AHEAD = '200px'

/** The tank to scale, below what is read first: it comes when somebody is about to see it. */
export function DrawingWhenSeen({ visit }: { visit: VisitPage }) {
  const box = useRef<HTMLDivElement>(null)
  const [near, setNear] = useState(false)
  useEffect(() => {
    if (!box.current) return
    const watch = new IntersectionObserver((entries) => setNear((was) => was || entries.some((one) => one.isIntersecting)), {
      rootMargin: AHEAD,
    })
    watch.observe(box.current)
    return () => watch.disconnect()
  }, [])
  return (
    <div ref={box} style={{ minHeight: HEIGHT }}>
      {near ? <Piece of={DRAWING} give={{ visit, height: HEIGHT }} /> : null}
    </div>
  )
}
