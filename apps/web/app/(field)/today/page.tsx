import { Today } from '@/features/today/today'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/today')

export default function TodayPage() {
  return <Today />
}
