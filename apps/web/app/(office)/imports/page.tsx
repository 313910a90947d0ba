import { Imports } from '@/features/imports/imports'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/imports')

export default function ImportsPage() {
  return <Imports />
}
