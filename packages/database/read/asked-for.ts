import { AskedFor } from '@almanac/contract/asked-for'
import type { Prisma } from '../generated/client.ts'

/** How a job was asked for; null where nothing was kept, or by a release that keeps it otherwise. */
export const askedFor = (json: Prisma.JsonValue | null): AskedFor | null => AskedFor.safeParse(json).data ?? null
