import type { Metadata } from 'next'
import { NewSiteForm } from '@/features/sites/add-site'

export const metadata: Metadata = { title: 'Add a site' }

export default function NewSitePage() {
  return <NewSiteForm />
}
