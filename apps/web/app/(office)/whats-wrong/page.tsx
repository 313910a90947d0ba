import { Suspense } from 'react'
import { WhatsWrong } from '@/features/whats-wrong/whats-wrong'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/whats-wrong')

export default function WhatsWrongPage() {
  return (
    <Suspense>
      <WhatsWrong />
    </Suspense>
  )
}
