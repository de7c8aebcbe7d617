import { describe, expect, it } from 'vitest'
import { run } from '../run.js'

async function said(...args: readonly string[]): Promise<{ readonly out: string; readonly err: string; readonly code: number }> {
  const [out, err]: [string[], string[]] = [[], []]
  const code = await run(['weight', ...args], { out: (text) => void out.push(text), err: (text) => void err.push(text), isWatched: false })
  return { out: out.join('\n'), err: err.join('\n'), code }
}
const coach = 'examples/sedge-6.yaml'

describe('weight', () => {
  it('prints every case worst first, and is 0 for the Sedge 6', async () => {
    const { out, code } = await said(coach)
    expect(code).toBe(0)
    const cases = [...out.matchAll(/^([A-H]) {2,}/gm)].map((m) => m[1])
    expect(cases).toHaveLength(8)
    expect(new Set(cases.slice(0, 3))).toEqual(new Set(['F', 'G', 'H']))
    expect(out.match(/not to be stowed so/g)).toHaveLength(3)
  })
  it('allows 25 kg in the tail of the stated list, at 10.2 % waste full', async () => {
    const { out, code } = await said(coach, '--list-only', '--add', '25 kg@7000,0,200')
    expect(code).toBe(0)
    expect(out).toMatch(/^D .*11\.0 -> 10\.2 %/m)
    expect(out).toMatch(/25 kg@7000,0,200: allowed; the place bears 33 kg/)
  })
  it('refuses what the tail cannot bear, offers the nose, and ends with 1', async () => {
    const { out, code } = await said(coach, '--list-only', '--add', '49 kg@7000,0,200')
    expect(code).toBe(1)
    expect(out).toContain('49 kg@7000,0,200: refused')
    expect(out).toMatch(/It could go to nose lockers/)
    expect(out).toMatch(/^FAIL Case D/m)
  })
  it('prints JSON, with the place looked at', async () => {
    const { out } = await said(coach, '--json', '--add', '25 kg@7000,0,200')
    const tree = JSON.parse(out) as { weight: { cases: { id: string }[] }; added: { room: { case: string } }[] }
    expect(tree.weight.cases.map((each) => each.id)).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'])
    expect(tree.added[0].room.case).toBe('D')
  })
  it.each(['25 kg', '25 kg@7000,0', '25@7000,0,0', '-25 kg@7000,0,0', '25 kg@aft,0,0', '25 kg@1,2,3@4'])(
    'says what is wrong with --add %s',
    async (add) => {
      const { err, code } = await said(coach, `--add=${add}`)
      expect(code).toBe(2)
      expect(err).toMatch(/--add: expected a mass and its place .*found/)
    },
  )
  it('lays scale readings on the masses, and says the bias of each group', async () => {
    const { out, code } = await said(coach, '--scales', 'examples/sedge-6.scales.yaml')
    expect(code).toBe(0)
    expect(out).toContain('case B: weighed 1751.0 kg')
    expect(out).toMatch(/^FU furniture .*±/m)
    expect((await said(coach, '--scales', 'examples/nothing.yaml')).code).toBe(2)
    expect((await said('examples/sedge-4.yaml', '--scales', 'examples/sedge-6.scales.yaml')).err).toContain('1 axle, and 2 were weighed')
  })
})
