import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser'

/** The parts of a message in ICU syntax, those within its tags, plurals and choices too. */
function partsOf(message: string): MessageFormatElement[] {
  const within = (part: MessageFormatElement): MessageFormatElement[] => [
    part,
    ...(part.type === TYPE.tag ? part.children.flatMap(within) : []),
    ...(part.type === TYPE.plural || part.type === TYPE.select
      ? Object.values(part.options).flatMap((option) => option.value.flatMap(within))
      : []),
  ]
  return parse(message).flatMap(within)
}

/** The literal pieces of a message: what stands between its values. */
export const piecesOf = (message: string): string[] => partsOf(message).flatMap((part) => (part.type === TYPE.literal ? [part.value] : []))

/** What a message is given, and the tags it sets: 'from', '<strong>', 'count:plural'. */
export function givenTo(message: string): string[] {
  const names = partsOf(message).flatMap((part) => {
    if (part.type === TYPE.argument) return [part.value]
    if (part.type === TYPE.number || part.type === TYPE.date || part.type === TYPE.time) return [`${part.value}:written`]
    if (part.type === TYPE.tag) return [`<${part.value}>`]
    return part.type === TYPE.plural || part.type === TYPE.select
      ? [`${part.value}:${part.type === TYPE.plural ? 'plural' : 'select'}`]
      : []
  })
  return [...new Set(names)].sort()
}
