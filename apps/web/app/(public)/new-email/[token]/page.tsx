import { NewEmail } from '@/features/join/new-email'
import { readOneTimePage } from '@/server/one-time-page'
import { linkMetadata, PublicWords } from '@/server/public-words'

export const dynamic = 'force-dynamic'

export const generateMetadata = () => linkMetadata('newEmail')

export default async function NewEmailPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const read = await readOneTimePage('email', token)
  return (
    <PublicWords>
      <NewEmail page={'refused' in read ? read : { token, email: read.link.email ?? '' }} />
    </PublicWords>
  )
}
