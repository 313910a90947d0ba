import { AskByMail } from '@/features/join/ask-by-mail'
import { mayBeMailed } from '@/server/asked-mail'
import { linkMetadata, PublicWords } from '@/server/public-words'

export const dynamic = 'force-dynamic'

export const generateMetadata = () => linkMetadata('found')

export default function FoundPage() {
  return (
    <PublicWords>
      <AskByMail purpose="set-up" may={mayBeMailed('set-up')} />
    </PublicWords>
  )
}
