import type { Metadata } from 'next'
import { Firm } from '@/features/firm/firm'

export const metadata: Metadata = { title: 'Company settings' }

export default function FirmPage() {
  return <Firm />
}
