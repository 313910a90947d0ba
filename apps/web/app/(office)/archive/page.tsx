import { Archive } from '@/features/archive/archive'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/archive')

export default function ArchivePage() {
  return <Archive />
}
