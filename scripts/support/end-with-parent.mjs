// Loaded into web and worker before their own code. The channel to the command closes when that is killed; then they end as on SIGTERM.
process.once('disconnect', () => process.kill(process.pid, 'SIGTERM'))
