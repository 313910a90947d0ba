import { NewPassword } from '@/features/join/new-password'
import { readOneTimePage } from '@/server/one-time-page'
import { linkMetadata, PublicWords } from '@/server/public-words'

export const dynamic = 'force-dynamic'

export const generateMetadata = () => linkMetadata('setPassword')

export default async function NewPasswordPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const read = await readOneTimePage('password', token)
  return (
    <PublicWords>
      <NewPassword page={'refused' in read ? read : { token }} />
    </PublicWords>
  )
}
