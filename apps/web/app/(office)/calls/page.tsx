import { Calls } from '@/features/calls/calls'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/calls')

export default function CallsPage() {
  return <Calls />
}
