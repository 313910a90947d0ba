import { Crews } from '@/features/crews/crews'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/crews')

export default function CrewsPage() {
  return <Crews />
}
