import { PrismaClient } from '@almanac/database/generated/client'

export const client = PrismaClient
