import { asStranger } from '@/server/asked-mail'

export const dynamic = 'force-dynamic'

/** Mails a link: for a forgotten password, or to found a company where strangers may. */
export const POST = asStranger
