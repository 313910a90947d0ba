import { AskNext } from '@/features/ask-next/ask-next'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/ask-next')

export default function AskNextPage() {
  return <AskNext />
}
