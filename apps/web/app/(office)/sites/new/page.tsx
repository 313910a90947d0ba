import { NewSiteForm } from '@/features/sites/add-site'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/sites/new')

export default function NewSitePage() {
  return <NewSiteForm />
}
