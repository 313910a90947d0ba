import { Supply } from '@/features/water/supply'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('supply')

export default async function SupplyPage({ params }: { params: Promise<{ id: string }> }) {
  return <Supply waterSupplyId={await recordId('waterSupply', (await params).id)} />
}
