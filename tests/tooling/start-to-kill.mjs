// What `npm start` does with a database and two processes, for a test that kills it: prints their numbers, then waits.
import { startPostgres } from '../../scripts/postgres.mjs'
import { startNode } from '../../scripts/support/processes.mjs'

const cluster = await startPostgres({ name: process.argv[2], volatile: true })
cluster.lookAfter(() => {})
const willing = startNode('willing', ['-e', 'setInterval(() => {}, 1000)'], { env: {} })
const stubborn = startNode('stubborn', ['-e', "process.on('SIGTERM', () => {}); setInterval(() => {}, 1000)"], { env: {} })
console.log(JSON.stringify({ willing: willing.child.pid, stubborn: stubborn.child.pid, port: cluster.port, data: cluster.data }))
