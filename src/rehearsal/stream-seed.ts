/**
 * The seed of one of many streams of random numbers that belong to one seed. Weather, probes, messages and faults draw from streams of
 * their own, so that the same seed gives the same weather and noise whatever the controller does and whatever else goes wrong.
 */
export function streamSeed(seed: number, stream: number): number {
  return (Math.imul(seed ^ 0x5bd1e995, 0x9e3779b1) ^ Math.imul(stream + 1, 0x85ebca6b)) >>> 0
}
