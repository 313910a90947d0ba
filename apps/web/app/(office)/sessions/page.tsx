import { Sessions } from '@/features/sessions/sessions'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/sessions')

export default function SessionsPage() {
  return <Sessions />
}
