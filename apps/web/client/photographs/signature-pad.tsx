'use client'
import { Button } from '@almanac/ui/button'
import { useEffect, useRef } from 'react'
import Pad from 'signature_pad'

/** What stands on the pad, as a PNG when it is asked for. */
export type Drawn = { picture: () => Promise<ArrayBuffer | null> }

type Props = { label: string; clear: string; onDrawn: (drawn: Drawn | null) => void }

/** A white field to sign on with finger, pen or mouse. `onDrawn` hears when there is something on it, and when there is nothing any more. */
export function SignaturePad({ label, clear, onDrawn }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const pad = useRef<Pad>(undefined)
  const hear = useRef(onDrawn)
  hear.current = onDrawn
  useEffect(() => {
    const field = canvas.current
    if (!field) return
    // As fine as the glass: the canvas has its own pixels.
    const ratio = Math.max(1, Math.min(3, window.devicePixelRatio))
    field.width = field.clientWidth * ratio
    field.height = field.clientHeight * ratio
    field.getContext('2d')?.scale(ratio, ratio)
    const made = new Pad(field, { penColor: '#111111', backgroundColor: '#ffffff' })
    pad.current = made
    const picture = () =>
      new Promise<Blob | null>((resolve) => field.toBlob(resolve, 'image/png')).then((blob) => blob?.arrayBuffer() ?? null)
    const drawn = () => hear.current(made.isEmpty() ? null : { picture })
    made.addEventListener('endStroke', drawn)
    return () => {
      made.removeEventListener('endStroke', drawn)
      made.off()
      hear.current(null)
    }
  }, [])
  return (
    <div className="flex flex-col gap-2">
      <canvas ref={canvas} aria-label={label} role="img" className="h-44 w-full max-w-xl rounded-sheet border border-edge bg-[#ffffff]" />
      <div className="flex items-center justify-between gap-4">
        <span className="text-small text-soft">{label}</span>
        <Button
          onClick={() => {
            pad.current?.clear()
            onDrawn(null)
          }}
        >
          {clear}
        </Button>
      </div>
    </div>
  )
}
