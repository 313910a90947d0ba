import { Supplies } from '@/features/water/supplies'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/water')

export default function WaterPage() {
  return <Supplies />
}
