import type { Metadata } from 'next'
import { AddSite } from '@/features/sites/add-site'

export const metadata: Metadata = { title: 'Add a site' }

export default function NewSitePage() {
  return <AddSite />
}
