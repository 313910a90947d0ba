// Loaded into web and worker before their own code. The channel to the command closes when that is killed; then they end as on SIGTERM, and in any case.
const insistMs = 6000

process.once('disconnect', () => {
  setTimeout(() => process.kill(process.pid, 'SIGKILL'), insistMs).unref()
  process.kill(process.pid, 'SIGTERM')
})
