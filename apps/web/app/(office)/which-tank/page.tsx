import { Suspense } from 'react'
import { WhichTank } from '@/features/which-tank/which-tank'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/which-tank')

export default function WhichTankPage() {
  return (
    <Suspense>
      <WhichTank />
    </Suspense>
  )
}
