import type { Metadata } from 'next'
import { Supply } from '@/features/water/supply'

export const metadata: Metadata = { title: 'Water supply' }

export default async function SupplyPage({ params }: { params: Promise<{ id: string }> }) {
  return <Supply waterSupplyId={(await params).id} />
}
