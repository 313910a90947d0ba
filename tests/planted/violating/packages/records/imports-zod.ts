import * as z from 'zod'

export const schema = z.string()
