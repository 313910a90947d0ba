import { TrackRecordPage } from '@/features/track-record/track-record'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/track-record')

export default function Page() {
  return <TrackRecordPage />
}
