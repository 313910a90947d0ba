import { Firm } from '@/features/firm/firm'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/firm')

export default function FirmPage() {
  return <Firm />
}
