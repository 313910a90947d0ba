import { parentPort, workerData } from 'node:worker_threads'
import { seeded } from '@almanac/forecast/numeric/seeded'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { coverageTrial } from '../simulate/coverage-study.ts'

/** Repetitions `first`, `first + step`, … of the study, each with a seed of its own, so that the number of threads changes nothing. */
export type CoverageShare = { first: number; step: number; repetitions: number; beds: number; seed: number }

const { first, step, repetitions, beds, seed } = workerData as CoverageShare
const prior = tradePriors()
for (let i = first; i < repetitions; i += step) {
  // A large odd factor keeps the seeds of neighbouring repetitions and of neighbouring runs apart.
  const trials = coverageTrial(beds, seeded(Math.imul(seed, 0x9e3779b1) + Math.imul(i + 1, 0x85ebca6b)), prior)
  parentPort?.postMessage(trials)
}
