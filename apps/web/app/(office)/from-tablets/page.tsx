import type { Metadata } from 'next'
import { FromTablets } from '@/features/from-tablets/from-tablets'

export const metadata: Metadata = { title: 'From the tablets' }

export default function FromTabletsPage() {
  return <FromTablets />
}
