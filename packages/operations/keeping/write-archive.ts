import { createWriteStream } from 'node:fs'
import fs from 'node:fs/promises'
import { Writable } from 'node:stream'
import type { Tx } from '@almanac/database/client'
import { EXPORTED, type ExportedTable, exportedColumns } from '@almanac/database/export-columns'
import {
  exportedCompany,
  exportedLines,
  exportedLists,
  exportedPictures,
  exportedReports,
  exportedRows,
} from '@almanac/database/read/export-rows'
import { letterheadIn } from '@almanac/database/read/letterhead'
import { fileStore } from '@almanac/files/file-store'
import { configure, Uint8ArrayReader, ZipWriter } from '@zip.js/zip.js'
import { csvLines, readMe, UTF8_MARK } from './archive-text.ts'

configure({ useWebWorkers: false })

/** What `company.json` says. `format` goes up when a reader of an older one would misread it. */
export type Manifest = {
  format: 1
  at: string
  company: Record<string, unknown>
  people: unknown[]
  tables: { name: string; columns: string[]; rows: number }[]
  /** Photographs and signatures in the archive, and the ids of those whose files the store did not have. */
  pictures: { written: number; missing: string[] }
  /** Service reports as they were mailed, likewise. */
  reports: { written: number; missing: string[] }
}

export type ArchiveProgress = (tablesDone: number, rowsWritten: number) => Promise<void>

const encoder = new TextEncoder()

/** Pieces of text as a stream that is read no faster than the disk writes. */
const bytesOf = (pieces: AsyncIterable<string>): ReadableStream<Uint8Array> => {
  const turns = pieces[Symbol.asyncIterator]()
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        const { done, value } = await turns.next()
        if (done) controller.close()
        else controller.enqueue(encoder.encode(value))
      },
    },
    { highWaterMark: 1 },
  )
}

async function* asCsv(tx: Tx, companyId: string, table: ExportedTable): AsyncGenerator<string> {
  const columns = exportedColumns(table)
  yield UTF8_MARK + csvLines([columns])
  for await (const lines of exportedRows(tx, companyId, table))
    yield csvLines(
      lines.map((line) => {
        const row = JSON.parse(line) as Record<string, unknown>
        return columns.map((column) => row[column])
      }),
    )
}

async function* asList(tx: Tx, companyId: string, list: { id: string; header: string[] }): AsyncGenerator<string> {
  yield UTF8_MARK + csvLines([list.header])
  for await (const rows of exportedLines(tx, companyId, list.id)) yield csvLines(rows)
}

async function* one(text: string): AsyncGenerator<string> {
  yield text
}

/** Writes everything that `tx` sees of a company into one ZIP file, a page of rows at a time. Answers how many rows, and the file's size. */
export async function writeArchive(
  tx: Tx,
  { companyId, people, file, at }: { companyId: string; people: unknown[]; file: string; at: Date },
  progress: ArchiveProgress,
): Promise<{ rows: number; bytes: number }> {
  const zip = new ZipWriter(Writable.toWeb(createWriteStream(file, { mode: 0o600 })) as WritableStream, { level: 6 })
  const add = (name: string, pieces: AsyncIterable<string>) => zip.add(name, bytesOf(pieces), { lastModDate: at })
  const company = await exportedCompany(tx, companyId)
  const tables: Manifest['tables'] = []
  let rows = 0
  async function* asJson(table: ExportedTable, count: { rows: number }): AsyncGenerator<string> {
    for await (const lines of exportedRows(tx, companyId, table)) {
      count.rows += lines.length
      rows += lines.length
      await progress(tables.length, rows)
      yield `${lines.join('\n')}\n`
    }
  }
  await add('read-me.txt', one(readMe(String(company.name), at.toISOString())))
  for (const table of Object.keys(EXPORTED) as ExportedTable[]) {
    const count = { rows: 0 }
    await add(`json/${table}.jsonl`, asJson(table, count))
    await add(`csv/${table}.csv`, asCsv(tx, companyId, table))
    tables.push({ name: table, columns: exportedColumns(table), rows: count.rows })
    await progress(tables.length, rows)
  }
  for (const list of await exportedLists(tx, companyId)) {
    const name = list.fileName.replace(/\.[a-z]+$/i, '').replace(/[^\p{L}\p{N} ._-]/gu, '_')
    await add(`lists/${list.id} ${name}.csv`, asList(tx, companyId, list))
  }
  const pictures: Manifest['pictures'] = { written: 0, missing: [] }
  for await (const { id, kind } of exportedPictures(tx, companyId)) {
    const bytes = await fileStore().get({ companyId, id })
    if (!bytes) {
      pictures.missing.push(id)
      continue
    }
    const [folder, end] = kind === 'signature' ? ['signatures', 'png'] : ['photographs', 'jpg']
    await zip.add(`${folder}/${id}.${end}`, new Uint8ArrayReader(bytes), { lastModDate: at, level: 0 })
    pictures.written += 1
  }
  const { logo } = await letterheadIn(tx, companyId)
  const png = logo && (await fileStore().get({ companyId, id: logo.id }))
  if (png) await zip.add('letterhead/logo.png', new Uint8ArrayReader(png), { lastModDate: at, level: 0 })
  const reports: Manifest['reports'] = { written: 0, missing: [] }
  for await (const { id } of exportedReports(tx, companyId)) {
    const bytes = await fileStore().get({ companyId, id })
    if (!bytes) reports.missing.push(id)
    else {
      await zip.add(`reports/${id}.pdf`, new Uint8ArrayReader(bytes), { lastModDate: at, level: 0 })
      reports.written += 1
    }
  }
  const manifest: Manifest = { format: 1, at: at.toISOString(), company, people, tables, pictures, reports }
  await add('company.json', one(`${JSON.stringify(manifest, null, 2)}\n`))
  await zip.close()
  return { rows, bytes: (await fs.stat(file)).size }
}
