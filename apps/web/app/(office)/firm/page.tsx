import type { Metadata } from 'next'
import { Firm } from '@/features/firm/firm'

export const metadata: Metadata = { title: 'The firm’s figures' }

export default function FirmPage() {
  return <Firm />
}
