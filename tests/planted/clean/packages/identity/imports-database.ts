import { identityClient } from '@almanac/database/client'

export const client = identityClient
