import { Rounds } from '@/features/rounds/rounds'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/rounds')

export default function RoundsPage() {
  return <Rounds />
}
