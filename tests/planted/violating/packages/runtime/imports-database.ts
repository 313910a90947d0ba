import { inCompany } from '@almanac/database/in-company'

export const scoped = inCompany
