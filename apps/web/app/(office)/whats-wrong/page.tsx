import type { Metadata } from 'next'
import { Suspense } from 'react'
import { WhatsWrong } from '@/features/whats-wrong/whats-wrong'

export const metadata: Metadata = { title: 'What is wrong?' }

export default function WhatsWrongPage() {
  return (
    <Suspense>
      <WhatsWrong />
    </Suspense>
  )
}
