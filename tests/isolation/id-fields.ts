import * as z from 'zod'
import type { ZodDef } from '../support/zod-def.ts'

/** Where an id stands in an input: keys from the root, '[]' for each element of a list. */
export type IdPath = string[]

/** Ids that the sender makes up, so that they name no record of any firm: of a command, and of a tablet's queue, which is looked for under the person alone. */
const MADE_BY_SENDER = ['commandId', 'queueId']

/** Every id field of a schema, nested and in lists, whether it may be left out or not; without those that the sender makes up. */
export function idPaths(schema: z.core.$ZodType | undefined, path: IdPath = []): IdPath[] {
  if (!schema) return []
  const def = schema._zod.def as unknown as ZodDef
  if (def.type === 'string') return def.format === 'uuid' || def.format === 'guid' ? [path] : []
  const inside = [
    ...Object.entries(def.shape ?? {}).map(([key, inner]) => idPaths(inner, [...path, key])),
    idPaths(def.element, [...path, '[]']),
    idPaths(def.valueType, [...path, '[]']),
    idPaths(def.innerType, path),
    idPaths(def.in, path),
    ...[...(def.options ?? []), ...(def.items ?? [])].map((option) => idPaths(option, path)),
  ]
  const all = inside.flat().filter((one) => !MADE_BY_SENDER.includes(one.join('.')))
  return [...new Map(all.map((one) => [one.join('.'), one])).values()]
}

/** Whether an input is a command, to be applied once. */
export function isCommand(schema: z.core.$ZodType | undefined): boolean {
  return schema instanceof z.ZodObject && 'commandId' in schema.shape
}

/** The value at a path; in lists, of the first element. */
export function valueAt(input: unknown, [head, ...rest]: IdPath): unknown {
  if (head === undefined) return input
  const next = head === '[]' ? (input as unknown[])?.[0] : (input as Record<string, unknown>)?.[head]
  return valueAt(next, rest)
}

/** A copy of the input with one value replaced; in lists, that of the first element. */
export function withValue(input: unknown, [head, ...rest]: IdPath, value: unknown): unknown {
  if (head === undefined) return value
  if (head !== '[]') return { ...(input as object), [head]: withValue((input as Record<string, unknown>)[head], rest, value) }
  const [first, ...others] = input as unknown[]
  return [withValue(first, rest, value), ...others]
}
