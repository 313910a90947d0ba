import { FromTablets } from '@/features/from-tablets/from-tablets'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/from-tablets')

export default function FromTabletsPage() {
  return <FromTablets />
}
