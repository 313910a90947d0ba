import './globals.css'
import type { Metadata, Viewport } from 'next'
import type { ReactNode } from 'react'

export const metadata: Metadata = { title: { default: 'Rebed Almanac', template: '%s · Rebed Almanac' } }
export const viewport: Viewport = { width: 'device-width', initialScale: 1 }

/** Each answer's scripts carry a nonce of their own, so no page is made beforehand. */
export const dynamic = 'force-dynamic'

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  )
}
