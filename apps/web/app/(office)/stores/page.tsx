import { Stores } from '@/features/stores/stores'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/stores')

export default function StoresPage() {
  return <Stores />
}
