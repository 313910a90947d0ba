import { JoinByLink } from '@/features/join/join'
import { readOneTimePage } from '@/server/one-time-page'
import { linkMetadata, PublicWords } from '@/server/public-words'

export const dynamic = 'force-dynamic'

export const generateMetadata = () => linkMetadata('joinCompany')

export default async function JoinPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const read = await readOneTimePage('invitation', token)
  return (
    <PublicWords>
      <JoinByLink page={'refused' in read ? read : invited(token, read)} />
    </PublicWords>
  )
}

function invited(token: string, { link, person }: Exclude<Awaited<ReturnType<typeof readOneTimePage>>, { refused: string }>) {
  return {
    ...{ token, company: link.company?.name ?? '', role: link.role ?? 'technician', name: link.name ?? '', email: link.email },
    signedIn: person && { name: person.name, email: person.email },
  }
}
