import type { Metadata } from 'next'
import { Suspense } from 'react'
import { WhichTank } from '@/features/which-tank/which-tank'

export const metadata: Metadata = { title: 'Which tank is it?' }

export default function WhichTankPage() {
  return (
    <Suspense>
      <WhichTank />
    </Suspense>
  )
}
