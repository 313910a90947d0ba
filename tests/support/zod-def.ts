import type * as z from 'zod'

/** What is read of a schema by those who walk one: of each kind of schema, what stands inside it. */
export type ZodDef = {
  type: string
  format?: string
  shape?: Record<string, z.core.$ZodType>
  element?: z.core.$ZodType
  innerType?: z.core.$ZodType
  options?: z.core.$ZodType[]
  entries?: Record<string, string>
  values?: unknown[]
  items?: z.core.$ZodType[]
  valueType?: z.core.$ZodType
  in?: z.core.$ZodType
}
