import { AppError as errors } from '@almanac/runtime/errors'
import { PrismaPg } from '@prisma/adapter-pg'

export const both = { errors, PrismaPg }
