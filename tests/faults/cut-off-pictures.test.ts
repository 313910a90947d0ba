import { createHash } from 'node:crypto'
import fs from 'node:fs'
import http from 'node:http'
import type { AddressInfo } from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { call } from '@orpc/server'
import exifr from 'exifr'
import type pg from 'pg'
import { Upload } from 'tus-js-client'
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { HEAD, PATCH } from '../../apps/web/app/api/pictures/[id]/upload/route.ts'
import { allProcedures, type Caller, makeCaller } from '../isolation/signed-in-call.ts'
import { cameraPicture } from '../support/camera-picture.ts'
import { startS3 } from '../support/s3-server.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

vi.mock('server-only', () => ({}))

let db: pg.Client
let firm: FirmRecords
let technician: Caller
let folder: string
let server: http.Server
/** Cuts the next connection once so many bytes of a request were read. */
let cutAfter: number | null = null
let asked: string[] = []

/** The body of a request, read no faster than the route takes it, with its connection cut where it is to be. */
async function* bodyOf(incoming: http.IncomingMessage): AsyncGenerator<Uint8Array> {
  let read = 0
  for await (const piece of incoming as AsyncIterable<Buffer>) {
    if (cutAfter !== null && read >= cutAfter) {
      cutAfter = null
      incoming.socket.destroy()
      throw new Error('cut off')
    }
    read += piece.length
    yield piece
  }
}

/** Pieces as a stream that asks for the next when the last was taken, and not before. */
const inTurn = (pieces: AsyncGenerator<Uint8Array>) =>
  new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        const { done, value } = await pieces.next()
        if (done) controller.close()
        else controller.enqueue(value)
      },
    },
    { highWaterMark: 0 },
  )

/** What stands in front of the routes in the served app, as far as it matters here. */
async function serve(incoming: http.IncomingMessage, outgoing: http.ServerResponse): Promise<void> {
  const { method = '', url = '' } = incoming
  asked.push(`${method} ${incoming.headers['upload-offset'] ?? ''}`.trim())
  const headers = new Headers(incoming.headers as Record<string, string>)
  headers.set('sec-fetch-site', 'same-origin')
  const sent = method === 'PATCH' ? { body: inTurn(bodyOf(incoming)), duplex: 'half' } : {}
  const request = new Request(`http://localhost${url}`, { method, headers, ...sent } as RequestInit)
  const id = url.split('/').at(-2) ?? ''
  const answer = await (method === 'HEAD' ? HEAD : PATCH)(request, { params: Promise.resolve({ id }) })
  outgoing.writeHead(answer.status, Object.fromEntries(answer.headers)).end(await answer.text())
}

async function begin(sent: Uint8Array, more: object = {}): Promise<string> {
  const found = allProcedures().find((one) => one.name === 'pictures.begin')
  if (!found) throw new Error('pictures.begin is gone')
  const commandId = newId()
  const sha256 = createHash('sha256').update(sent).digest('hex')
  const input = {
    commandId,
    visitId: firm.visitId,
    kind: 'old-bed',
    takenAt: '2026-12-02T15:00:00.000Z',
    bytes: sent.length,
    sha256,
    ...more,
  }
  const log = { debug() {}, info() {}, warn() {}, error() {} }
  await call(found.procedure, input as never, { context: { headers: technician.headers, requestId: 'r', log } as never })
  return commandId
}

/** Sends by the protocol's own client, as a browser does. */
function upload(pictureId: string, bytes: Uint8Array, retryDelays: number[] | null): Promise<void> {
  const { port } = server.address() as AddressInfo
  return new Promise((resolve, reject) => {
    new Upload(Buffer.from(bytes), {
      uploadUrl: `http://127.0.0.1:${port}/api/pictures/${pictureId}/upload`,
      headers: { cookie: technician.headers.get('cookie') ?? '' },
      ...{ retryDelays, storeFingerprintForResuming: false, onSuccess: () => resolve(), onError: reject },
    }).start()
  })
}

const row = async (id: string) => (await db.query('select * from picture where company_id = $1 and id = $2', [firm.companyId, id])).rows[0]

beforeAll(async () => {
  db = await inspector()
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-cut-off-'))
  vi.stubEnv('DATA_DIR', folder)
  vi.stubEnv('LOG_LEVEL', 'silent')
  forgetConfig()
  server = http.createServer((incoming, outgoing) => void serve(incoming, outgoing).catch(() => outgoing.destroy()))
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
  technician = await makeCaller(firm.companyId, 'technician')
  asked = []
})
afterAll(async () => {
  await new Promise((resolve) => server.close(resolve))
  fs.rmSync(folder, { recursive: true })
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a picture whose connection is cut', () => {
  test('goes on where it was, by the open protocol’s own client, and is kept once, without its place', async () => {
    const sent = await cameraPicture()
    const id = await begin(sent)
    cutAfter = 20_000
    await upload(id, sent, [0, 0])
    // It did not begin anew: the second sending starts behind what had come.
    const offsets = asked.filter((one) => one.startsWith('PATCH')).map((one) => Number(one.split(' ')[1]))
    expect(offsets).toHaveLength(2)
    expect(offsets[0]).toBe(0)
    expect(offsets[1]).toBeGreaterThan(0)
    expect(offsets[1]).toBeLessThan(sent.length)
    const kept = fs.readFileSync(path.join(folder, 'files', firm.companyId, id))
    expect(await row(id)).toMatchObject({
      ...{ state: 'stored', bytes: kept.length, width: 480, height: 640 },
      sha256: createHash('sha256').update(kept).digest('hex'),
    })
    expect(await exifr.gps(kept)).toBeUndefined()
    expect(fs.readdirSync(path.join(folder, 'half-sent', firm.companyId))).toEqual([])
    // Sent once more, since the tablet never heard the last answer: nothing changes.
    const before = await row(id)
    await upload(id, sent, null)
    expect(await row(id)).toEqual(before)
  })

  test('is kept at the next question when the server ended between its last byte and the store', async () => {
    const sent = await cameraPicture({ width: 64, height: 64 })
    const id = await begin(sent)
    const place = path.join(folder, 'half-sent', firm.companyId)
    fs.mkdirSync(place, { recursive: true })
    fs.writeFileSync(path.join(place, id), sent)
    await upload(id, sent, null)
    expect(asked).toEqual(['HEAD'])
    expect(await row(id)).toMatchObject({ state: 'stored' })
  })

  test('that arrives damaged is not kept, and is sent from its beginning', async () => {
    const sent = await cameraPicture({ width: 64, height: 64 })
    const id = await begin(sent)
    const damaged = sent.map((byte, i) => (i === 100 ? byte ^ 1 : byte))
    await expect(upload(id, damaged, null)).rejects.toThrow('response code: 409')
    expect(await row(id)).toMatchObject({ state: 'coming' })
    await upload(id, sent, null)
    expect(await row(id)).toMatchObject({ state: 'stored' })
  })
})

test('the same picture lies in a bucket where one is set', async () => {
  const bucket = await startS3()
  vi.stubEnv('FILES_URL', bucket.url)
  forgetConfig()
  try {
    const sent = await cameraPicture({ width: 64, height: 64 })
    const id = await begin(sent)
    await upload(id, sent, null)
    expect(await row(id)).toMatchObject({ state: 'stored' })
    expect(fs.existsSync(path.join(folder, 'files', firm.companyId))).toBe(false)
    const { openPicture } = await import('@almanac/operations/pictures/open-picture')
    const { bytes } = await openPicture(firm, id)
    expect(bytes.length).toBe((await row(id)).bytes)
  } finally {
    vi.stubEnv('FILES_URL', undefined)
    forgetConfig()
    await bucket.stop()
  }
})

test('a page that calls itself a picture is refused, and nothing of it is kept', async () => {
  const page = new TextEncoder().encode('<html>hello</html>')
  const id = await begin(page)
  await expect(upload(id, page, null)).rejects.toThrow('response code: 400')
  expect(await row(id)).toMatchObject({ state: 'gone' })
  await expect(upload(id, page, null)).rejects.toThrow('response code: 404')
  expect(fs.existsSync(path.join(folder, 'files', firm.companyId))).toBe(false)
})
