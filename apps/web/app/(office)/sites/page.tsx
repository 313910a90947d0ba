import { Suspense } from 'react'
import { Sites } from '@/features/sites/sites'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/sites')

export default function SitesPage() {
  return (
    <Suspense>
      <Sites />
    </Suspense>
  )
}
