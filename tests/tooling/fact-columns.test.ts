import fs from 'node:fs'
import path from 'node:path'
import { factColumns, type ImportKind } from '@almanac/records/import-facts'
import { describe, expect, test } from 'vitest'

const SCHEMA = path.resolve(import.meta.dirname, '../../prisma/schema')

/** Columns that say where a row belongs, or what became of it, and nothing of the world. */
const OF_THE_ROW = [
  'companyId',
  'id',
  'version',
  'matchKey',
  'batchId',
  'createdAt',
  'archivedAt',
  'archiveReason',
  'erasedAt',
  'withdrawnAt',
  'entered',
  'factSources',
]

const MODELS: Record<ImportKind, string> = {
  ...{ customer: 'Customer', contact: 'Contact', site: 'Site', softener: 'Softener' },
  ...{ tank: 'Tank', bed: 'Bed', test: 'WaterTest' },
}

/** Facts that no list brings, each with its reason; a new column stands here or among the import's facts. */
const NOT_OF_A_LIST: Record<ImportKind, Record<string, string>> = {
  customer: { notes: 'a list’s notes are kept with the softener, whose history they tell' },
  contact: {
    ...{ customerId: 'whose contact it is', siteId: 'a list’s contact is the customer’s', role: 'whoever a list names pays' },
    deadEmail: 'what a mail server answered, not what a list says',
    language: 'no list seen so far tells it',
  },
  site: {
    ...{ notes: 'kept with the softener', visitWeekdays: 'agreed with the customer', visitFrom: 'agreed', visitUntil: 'agreed' },
  },
  softener: {
    ...{ siteId: 'where it stands', arrangement: 'follows from the number of tanks', peopleServed: 'asked at a visit or a call' },
    condemnedDay: 'a technician’s finding',
  },
  tank: { softenerId: 'whose tank it is', position: 'counted' },
  bed: {
    ...{ tankId: 'whose bed it is', gravelLb: 'measured at a visit', tubeCutIn: 'measured at a visit' },
    ...{ firstSeenDay: 'kept from the first sight of it', beganVisitId: 'a visit of ours', endedVisitId: 'a visit of ours' },
  },
  test: {
    ...{ siteId: 'where it was drawn', softenerId: 'whose water', visitId: 'a visit of ours', point: 'a list tells of raw water' },
    ...{ manganeseMgL: 'no list seen so far tells it', ph: 'the same', dissolvedSolidsMgL: 'the same', temperatureC: 'the same' },
    source: 'the line of the list',
  },
}

/** The columns of a model that hold a value, not another model. */
function columnsOf(model: string, schema: string): string[] {
  const body = new RegExp(`^model ${model} \\{(.*?)^\\}`, 'ms').exec(schema)?.[1]
  if (body === undefined) throw new Error(`the schema has no model ${model}`)
  return [...body.matchAll(/^ {2}([a-z]\w*) +(?:String|Int|Float|DateTime|Boolean|Json|Decimal|BigInt)(?:\[\]|\?)?(?: |$)/gm)].map(
    ([, column]) => column ?? '',
  )
}

describe('every column that holds a fact', () => {
  const schema = fs
    .readdirSync(SCHEMA)
    .map((file) => fs.readFileSync(path.join(SCHEMA, file), 'utf8'))
    .join('\n')

  test.each(Object.keys(MODELS) as ImportKind[])('of a %s is brought by an import, or it is said why not', (kind) => {
    const columns = columnsOf(MODELS[kind], schema).filter((column) => !OF_THE_ROW.includes(column))
    const brought = Object.values(factColumns[kind]).flat()
    const said = Object.keys(NOT_OF_A_LIST[kind])
    expect(columns.filter((column) => !brought.includes(column) && !said.includes(column))).toEqual([])
    // Nothing is said of a column that is gone, or that an import does bring.
    expect(said.filter((column) => !columns.includes(column) || brought.includes(column))).toEqual([])
  })

  test('consents alone are brought without being columns of the contact', () => {
    const contact = columnsOf('Contact', schema)
    expect(
      Object.values(factColumns.contact)
        .flat()
        .filter((column) => !contact.includes(column)),
    ).toEqual(['consentEmail', 'consentPhone', 'consentText', 'consentLetter'])
    for (const kind of Object.keys(MODELS) as ImportKind[])
      if (kind !== 'contact')
        expect(
          Object.values(factColumns[kind])
            .flat()
            .filter((column) => !columnsOf(MODELS[kind], schema).includes(column)),
        ).toEqual([])
  })
})
