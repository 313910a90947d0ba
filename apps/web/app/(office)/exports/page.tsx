import { Exports } from '@/features/exports/exports'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/exports')

export default function ExportsPage() {
  return <Exports />
}
