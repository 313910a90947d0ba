import type { Metadata } from 'next'
import { Supply } from '@/features/water/supply'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Water supply' }

export default async function SupplyPage({ params }: { params: Promise<{ id: string }> }) {
  return <Supply waterSupplyId={await recordId('waterSupply', (await params).id)} />
}
