export const dynamic = 'force-dynamic'

/** Alive: the process answers. */
export const GET = () => Response.json({ alive: true })
