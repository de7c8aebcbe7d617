/**
 * A fixed piece of arithmetic to hold the other figures against, since machines differ and shared ones differ by the minute.
 *
 * It mixes what a derivation is made of, in one thread and without memory: square roots, sines, divisions and comparisons,
 * each step needing the one before so that nothing can be skipped or run side by side. About 50 ms on the machine the budgets
 * were set on. NEVER change it: every ratio written down before would lose its meaning.
 */
const STEPS = 2_200_000

export function referenceLoop(): number {
  let x = 0.5
  let turns = 0
  for (let i = 1; i <= STEPS; i++) {
    x = Math.sqrt(x * x + 1 / i) + 0.001 * Math.sin(x)
    if (x > 2) {
      x -= 1.5
      turns += 1
    }
  }
  // Handed back so that the engine cannot drop the loop.
  return x + turns
}
