import { useWords } from '@almanac/words/use-words'
import { encode } from 'uqr'

/** A text as a QR code (ISO/IEC 18004), dark on light in every color scheme, so that any camera reads it. */
export function QrCode({ text }: { text: string }) {
  const words = useWords('ownAccount')
  const { data, size } = encode(text, { border: 4 })
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ''))).join('')
  return (
    <svg viewBox={`0 0 ${size} ${size}`} width="220" height="220" role="img" aria-label={words('qr')}>
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" shapeRendering="crispEdges" />
    </svg>
  )
}
