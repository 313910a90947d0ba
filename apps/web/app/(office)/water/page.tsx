import type { Metadata } from 'next'
import { Supplies } from '@/features/water/supplies'

export const metadata: Metadata = { title: 'Water' }

export default function WaterPage() {
  return <Supplies />
}
