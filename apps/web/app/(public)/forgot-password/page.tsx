import { AskByMail } from '@/features/join/ask-by-mail'
import { mayBeMailed } from '@/server/asked-mail'
import { linkMetadata, PublicWords } from '@/server/public-words'

export const dynamic = 'force-dynamic'

export const generateMetadata = () => linkMetadata('forgotten')

export default function ForgotPasswordPage() {
  return (
    <PublicWords>
      <AskByMail purpose="password" may={mayBeMailed('password')} />
    </PublicWords>
  )
}
