import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import type { ErasedCounts } from '@almanac/contract/erase'
import { closeClients } from '@almanac/database/client'
import { TABLES } from '@almanac/database/tables'
import { fileStore } from '@almanac/files/file-store'
import { exportedPeople } from '@almanac/identity/exported-people'
import { addMembership } from '@almanac/identity/people'
import { bringIn } from '@almanac/operations/imports/test-import'
import { exportCompany } from '@almanac/operations/keeping/export-company'
import { removeErasedPictures } from '@almanac/operations/pictures/remove-erased'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { loggedError } from '@almanac/runtime/log'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { call } from '@orpc/server'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { EMAIL, NAME, NAMES, namedPlaces, PHONE, PLANTED, plant, serverLog } from '../support/planted-person.ts'
import { NOW } from '../support/records.ts'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../support/two-firms.ts'
import { makePasskey } from '../support/ways-in.ts'
import { allProcedures, type Caller, makeCaller } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

let db: pg.Client
let folder: string
let mine: FirmRecords
let theirs: FirmRecords
let owner: Caller
let logged: string[]
/** What an earlier test left. */
let before: Set<string>

/** A log that keeps what it is handed, as the log's own serializer leaves it. */
const log = () => {
  const take = (...parts: unknown[]) =>
    void logged.push(JSON.stringify(parts, (key, value: unknown) => (key === 'error' ? loggedError(value) : value)))
  return { debug: take, info: take, warn: take, error: take, fatal: take }
}

async function ask(name: string, input: object) {
  const found = allProcedures().find((one) => one.name === name)
  if (!found) throw new Error(`${name} is gone`)
  return call(found.procedure, input as never, { context: { headers: owner.headers, requestId: 'r', log: log() } as never })
}

/** Where anything still names the person, of this test and not of the other company. */
const found = async () => (await namedPlaces(db)).filter((place) => !before.has(place) && !place.includes(theirs.companyId))

const filesNaming = () =>
  fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))

const countsOf = async (companyId: string) => {
  const kept = TABLES.tenant.filter((table) => !['search_token', 'audit_entry', 'applied_command'].includes(table))
  const prints = await fingerprint(db, kept, [companyId])
  return Object.fromEntries(kept.map((table) => [table, prints[`${table} ${companyId}`]?.split(' ')[0]]))
}

beforeAll(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-erase-'))
  process.env.DATA_DIR = folder
  setClock(() => new Date(NOW))
  db = await inspector()
})
beforeEach(async () => {
  logged = []
  before = new Set(await namedPlaces(db))
  mine = await makeFirmRecords(db)
  theirs = await makeFirmRecords(db)
  owner = await makeCaller(mine.companyId)
})
afterAll(async () => {
  setClock()
  fs.rmSync(folder, { recursive: true })
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a customer who is erased', () => {
  beforeEach(async () => {
    const list = [
      'Name,Phone,Email,Street,Town,Tank,Notes',
      `${NAME},${PHONE},${EMAIL},Weir Road 9,Weirham,10x54,"${PLANTED.replaceAll('"', '""')}"`,
    ]
    await bringIn(mine, list.join('\n'))
    await db.query(`update customer set name = $2 where company_id = $1 and id = $3`, [mine.companyId, NAME, mine.customerId])
    await db.query(
      `update contact set name = $2, phone = '555 0100', other_phone = '555 0101; ' || $3, email = $4 where company_id = $1 and id = $5`,
      [...[mine.companyId, NAME, PHONE, EMAIL, mine.contactId]],
    )
    // The import's own customer of the name is another record of the same person: it goes first, below.
    await ask('exports.start', { commandId: newId() })
    await exportCompany(
      { companyId: mine.companyId, exportId: (await db.query(`select id from company_export where state = 'waiting'`)).rows[0].id },
      exportedPeople,
    )
  })

  test('is found in no table, file or log any more; what was done stays, and another company is not touched', async () => {
    // Checks and uniques refuse the text in many columns: the server notes each refusal, and must not note the row.
    const server = await serverLog(db)
    const took = await plant(db, mine.companyId)
    // So many columns take a text: a test that planted little would show little.
    expect(took.length).toBeGreaterThan(60)
    expect(took).toEqual(expect.arrayContaining(['job.notes', 'visit.close_out', 'audit_entry.detail', 'message.body', 'import_row.cells']))
    await plant(db, theirs.companyId, NAMES)
    await db.query(`insert into queue.job (name, data, output) values ('forecast-beds', $1, $2)`, [
      { companyId: mine.companyId },
      JSON.stringify({ message: `Could not go on: ${PLANTED}` }),
    ])
    expect((await found()).length).toBeGreaterThan(60)
    expect(filesNaming()).toHaveLength(1)
    const [elsewhere, counts] = [await fingerprint(db, TABLES.tenant, [theirs.companyId]), await countsOf(mine.companyId)]
    // Refusals and errors on the way are logged as well.
    await expect(
      ask('sites.changeCustomer', { commandId: newId(), customerId: mine.customerId, version: 99, name: NAME }),
    ).rejects.toThrow()
    await expect(
      ask('water.addSupply', { commandId: newId(), name: `${NAME}’s well`, kind: 'private-well', nonsense: PLANTED }),
    ).resolves.toBeTruthy()
    await expect(ask('water.addSupply', { commandId: newId(), name: `${NAME}’s well`, kind: 'private-well' })).rejects.toThrow()
    counts.water_supply = String(Number(counts.water_supply) + 1)

    const twins = await db.query<{ id: string; version: number }>(`select id, version from customer where company_id = $1 and name = $2`, [
      mine.companyId,
      NAME,
    ])
    expect(twins.rows).toHaveLength(2)
    // What it would take is said before, counted by the erasing itself, and nothing is changed by asking.
    const asked = await fingerprint(db, TABLES.tenant, [mine.companyId])
    const foretold = (await ask('erase.previewCustomer', { customerId: mine.customerId })) as ErasedCounts
    // The fixture's own and the one made above.
    expect(foretold).toMatchObject({ exports: 2 })
    expect(foretold.contacts * foretold.messages * foretold.pictures).toBeGreaterThan(0)
    expect(await fingerprint(db, TABLES.tenant, [mine.companyId])).toEqual(asked)
    const [first, second] = twins.rows.toSorted((one) => (one.id === mine.customerId ? -1 : 1))
    for (const { id, version } of [first, second].flatMap((one) => one ?? [])) {
      const erased = (await ask('erase.customer', { commandId: newId(), customerId: id, version })) as { places: number }
      if (id === mine.customerId) expect(erased.places).toBe(foretold.places)
    }

    expect(await found()).toEqual([])
    expect(filesNaming()).toEqual([])
    expect(logged.length).toBeGreaterThan(4)
    for (const line of logged) expect(line).not.toMatch(/quill|555.?0199/i)
    expect(server.since()).not.toMatch(/quill|555.?0199/i)
    expect(await countsOf(mine.companyId)).toEqual(counts)
    const after = await fingerprint(db, TABLES.tenant, [theirs.companyId])
    expect(after).toEqual(elsewhere)
  })

  test('is in no photograph of a visit to them and no signature any more; those of whoever held the site later stay', async () => {
    for (const firm of [mine, theirs]) await fileStore().put({ companyId: firm.companyId, id: firm.pictureId }, Buffer.from(NAME))
    const half = path.join(folder, 'half-sent', mine.companyId)
    fs.mkdirSync(half, { recursive: true })
    fs.writeFileSync(path.join(half, mine.signedPictureId), NAME)
    // Sold the day after the first visit: the second is to somebody else.
    await db.query(`update tenure set to_day = '2026-12-01' where company_id = $1 and site_id = $2`, [mine.companyId, mine.siteId])
    await db.query(`insert into tenure (company_id, id, site_id, customer_id, from_day) values ($1, $2, $3, $4, '2026-12-02')`, [
      ...[mine.companyId, newId(), mine.siteId, mine.otherCustomerId],
    ])
    const early = newId()
    await db.query(
      `insert into picture (company_id, id, visit_id, kind, state, taken_at, person_id, sent_bytes, sent_sha256, bytes, sha256, width, height, begun_at, stored_at)
       select company_id, $2, $3, kind, state, taken_at, person_id, sent_bytes, sent_sha256, bytes, sha256, width, height, begun_at, stored_at
       from picture where company_id = $1 and id = $4`,
      [mine.companyId, early, mine.lateVisitId, mine.pictureId],
    )
    await fileStore().put({ companyId: mine.companyId, id: early }, Buffer.from(NAME))
    const states = async () => (await db.query('select id, state from picture where company_id = $1 order by id', [mine.companyId])).rows
    await ask('erase.customer', { commandId: newId(), customerId: mine.customerId, version: 1 })
    await removeErasedPictures({ companyId: mine.companyId })
    expect((await states()).filter((one) => one.state === 'gone').map((one) => one.id)).toEqual([early])
    expect(await fileStore().get({ companyId: mine.companyId, id: early })).toBeNull()
    // The other holder's: erased when they are, with what was half sent and what came by their link.
    await ask('erase.customer', { commandId: newId(), customerId: mine.otherCustomerId, version: 1 })
    await removeErasedPictures({ companyId: mine.companyId })
    expect((await states()).map((one) => one.state)).toEqual(['gone', 'gone', 'gone', 'gone'])
    expect(filesNaming().filter((file) => file.includes(mine.companyId) && !file.endsWith('.zip'))).toEqual([])
    expect(filesNaming().filter((file) => file.includes(theirs.pictureId))).toHaveLength(1)
    const { rows } = await db.query('select name from signature where company_id = $1', [mine.companyId])
    expect(rows).toEqual([{ name: null }])
    await fileStore().remove({ companyId: theirs.companyId, id: theirs.pictureId })
  })

  test('is erased once: sent again the answer stands, asked anew there is nobody', async () => {
    const input = { commandId: newId(), customerId: mine.customerId, version: 1 }
    const first = await ask('erase.customer', input)
    expect(await ask('erase.customer', input)).toEqual(first)
    await expect(ask('erase.customer', { ...input, commandId: newId(), version: 2 })).rejects.toMatchObject({ code: 'not-found' })
  })

  test('keeps the same name of somebody else, and takes it out of the notes of their own site alone', async () => {
    await db.query(`update customer set name = $2 where company_id = $1 and id = $3`, [mine.companyId, NAME, mine.otherCustomerId])
    const other = newId()
    await db.query(`insert into site (company_id, id, label, notes) values ($1, $2, 'Elm Street 2', $3)`, [
      mine.companyId,
      other,
      `key with ${NAME}`,
    ])
    await db.query(`update site set notes = $3 where company_id = $1 and id = $2`, [mine.companyId, mine.siteId, `${NAME} is deaf`])
    await ask('erase.customer', { commandId: newId(), customerId: mine.customerId, version: 1 })
    const notes = async (id: string) =>
      (await db.query('select notes from site where company_id = $1 and id = $2', [mine.companyId, id])).rows[0]?.notes
    expect(await notes(mine.siteId)).toBe('[erased] is deaf')
    expect(await notes(other)).toBe(`key with ${NAME}`)
    const { rows } = await db.query('select name from customer where company_id = $1 and id = $2', [mine.companyId, mine.otherCustomerId])
    expect(rows).toEqual([{ name: NAME }])
  })
})

test('a contact is erased without the customer; one who is the customer is not', async () => {
  await expect(ask('erase.contact', { commandId: newId(), contactId: mine.contactId, version: 1 })).rejects.toMatchObject({
    code: 'conflict',
  })
  await db.query(`update contact set name = $2 where company_id = $1 and id = $3`, [mine.companyId, NAME, mine.contactId])
  await db.query(`update site set access_notes = $2 where company_id = $1 and id = $3`, [mine.companyId, PLANTED, mine.siteId])
  await ask('erase.contact', { commandId: newId(), contactId: mine.contactId, version: 1 })
  expect((await found()).filter((place) => !/630|zeb@/.test(place))).toEqual([])
  const { rows } = await db.query('select name from customer where company_id = $1 and id = $2', [mine.companyId, mine.customerId])
  expect(rows).toEqual([{ name: 'Hanna Vale' }])
})

describe('one of the firm’s own people who is erased', () => {
  async function colleague(email = `${newId()}@quill.example`) {
    const person = await makeCaller(mine.companyId, 'technician')
    await db.query('update person set name = $2, email = $3 where id = $1', [person.personId, NAME, email])
    await db.query('update colleague set name = $2, person_id = $3 where company_id = $1 and id = $4', [
      ...[mine.companyId, NAME, person.personId, mine.freeColleagueId],
    ])
    return { ...person, email }
  }
  const erase = () => ask('erase.colleague', { commandId: newId(), colleagueId: mine.freeColleagueId, version: 1 })

  test('is found in no table any more, and signs in no more', async () => {
    const { personId, email } = await colleague('zeb@quill.example')
    await db.query('update visit set notes = $2 where company_id = $1', [mine.companyId, `done by ${NAME}, ${email}`])
    await db.query(
      `insert into one_time_link (id, purpose, token_hash, company_id, role, name, email, expires_at)
      values ($1, 'invitation', repeat('a', 64), $2, 'technician', $3, $4, now())`,
      [newId(), mine.companyId, NAME, email],
    )
    await makePasskey(db, personId)
    await erase()
    expect(await found()).toEqual([])
    const count = async (table: string, column: string) =>
      Number((await db.query(`select count(*) as n from ${table} where ${column} = $1`, [personId])).rows[0]?.n)
    for (const table of ['session', 'account', 'two_factor', 'passkey']) expect([table, await count(table, 'user_id')]).toEqual([table, 0])
    const { rows } = await db.query('select name, person_id from colleague where company_id = $1 and id = $2', [
      mine.companyId,
      mine.freeColleagueId,
    ])
    expect(rows).toEqual([{ name: 'Former colleague', person_id: null }])
  })

  test('keeps their sign-in where they work for another company, and loses their place here', async () => {
    const { personId, email } = await colleague()
    await addMembership(personId, theirs.companyId, 'technician')
    await erase()
    expect((await db.query('select name, email from person where id = $1', [personId])).rows).toEqual([{ name: NAME, email }])
    const { rows } = await db.query('select company_id from membership where person_id = $1 and ended_at is null', [personId])
    expect(rows).toEqual([{ company_id: theirs.companyId }])
  })

  test('cannot be who asks, nor anybody still on a day sheet to come', async () => {
    await db.query('update colleague set person_id = $2 where company_id = $1 and id = $3', [
      mine.companyId,
      owner.personId,
      mine.freeColleagueId,
    ])
    await expect(erase()).rejects.toMatchObject({ code: 'conflict' })
    const planned = { commandId: newId(), colleagueId: mine.colleagueId, version: 1 }
    await expect(ask('erase.colleague', planned)).rejects.toMatchObject({ code: 'conflict' })
  })
})
