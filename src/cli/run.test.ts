import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { designSchema } from '../documents/json/design-schema.js'
import { readManifest } from '../documents/packet/manifest.js'
import { run } from './run.js'

const root = fileURLToPath(new URL('../..', import.meta.url))
const coach = join(root, 'examples/sedge-6.yaml')
const folder = mkdtempSync(join(tmpdir(), 'coachwright-command-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const written = (name: string, text: string | Uint8Array): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
/** A coach that is the Sedge 6 but for what is said. */
const changed = (name: string, text: string): string => written(name, `extends: ${coach}\nschema: 1\n${text}\n`)

interface Said {
  readonly code: number
  readonly out: string
  readonly err: string
}
/** The command in this process: the same words and codes, half a second sooner. */
async function said(...args: readonly string[]): Promise<Said> {
  const [out, err]: [string[], string[]] = [[], []]
  const code = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text), isWatched: false })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
const command = ['scripts/run.mjs', 'src/cli/main.ts'] as const

describe('the command as it is run', () => {
  it('prints a whole design through a pipe, and nothing else', () => {
    const done = spawnSync(process.execPath, [...command, 'derive', 'examples/sedge-6.yaml', '--json'], {
      cwd: root,
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    })
    expect([done.status, done.stderr]).toEqual([0, ''])
    const read = designSchema.safeParse(JSON.parse(done.stdout))
    expect(read.error?.issues ?? []).toEqual([])
    expect(read.data?.coach.name).toBe('Sedge 6')
  })

  it('ends with 2 and each fault on its line, without a stack trace', () => {
    const done = spawnSync(process.execPath, [...command, 'check', 'examples/broken/seams-out-of-order.yaml'], {
      cwd: root,
      encoding: 'utf8',
    })
    expect(done.status).toBe(2)
    expect(done.stdout).toBe('')
    expect(done.stderr).toMatch(/^examples\/broken\/seams-out-of-order\.yaml:7:27 shell seams seam-2 girth: .*\.\n$/)
  })

  it('does not mind a reader that goes away', () => {
    const done = spawnSync('sh', ['-c', `"${process.execPath}" ${command.join(' ')} derive examples/sedge-6.yaml --json | head -c 100`], {
      cwd: root,
      encoding: 'utf8',
    })
    expect([done.stdout.length, done.stderr]).toEqual([100, ''])
  })

  it('stops a packet on Ctrl-C and leaves nothing', async () => {
    const out = join(folder, 'stopped')
    const child = spawn(process.execPath, [...command, 'packet', 'examples/sedge-4.yaml', '--out', out], { cwd: root })
    await afterStart(child, folder)
    child.kill('SIGINT')
    const [code, err] = await endOf(child)
    expect([code, err.split('\n').at(-2)]).toEqual([130, 'Stopped. Nothing was changed.'])
    expect(readdirSync(folder).filter((name) => name.includes('stopped'))).toEqual([])
  })
})

/** Waits until the packet's folder beside the wanted one is there, so that the signal meets a packet half written. */
function afterStart(child: ChildProcess, where: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const look = setInterval(() => {
      if (readdirSync(where).some((name) => name.startsWith('.stopped-writing'))) {
        clearInterval(look)
        resolve()
      }
    }, 20)
    child.once('exit', (code) => {
      clearInterval(look)
      reject(new Error(`ended with ${code} before it was stopped`))
    })
  })
}

function endOf(child: ChildProcess): Promise<readonly [code: number | null, err: string]> {
  let err = ''
  child.stderr?.on('data', (some: Buffer) => {
    err += some.toString()
  })
  return new Promise((resolve) => child.once('close', (code) => resolve([code, err])))
}

describe('check', () => {
  it('is 0 for the Sedge 6, whose cautions are said', async () => {
    const { code, out } = await said('check', coach)
    expect([code, out.match(/^FAIL.*/m)?.[0]]).toEqual([0, undefined])
    expect(out).toContain('cuts frame F5; header-CW1 and sill-CW1 carry it.')
    expect(out).toContain('Not covered by any check of this version:')
  })

  it('is 1 when a check fails, the failing one first, with what would mend it', async () => {
    const wide = changed('wide.yaml', 'openings:\n  - {id: RW3, width: 560 mm}')
    const { code, out } = await said('check', wide, '--json')
    expect(code).toBe(1)
    const { verdict, checks, counts } = JSON.parse(out)
    expect([verdict, checks[0].verdict]).toEqual(['fail', 'fail'])
    expect(
      checks
        .slice(0, counts.fail)
        .map((c: { says: string }) => c.says)
        .join(' '),
    ).toContain('RW3')
    const rank = ['fail', 'caution', 'not-checked', 'pass']
    const order = checks.map((c: { verdict: string }) => rank.indexOf(c.verdict))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    const margins = checks
      .filter((c: { verdict: string; margin: number | null }) => c.verdict === 'pass' && c.margin !== null)
      .map((c: { margin: number }) => c.margin)
    expect(margins).toEqual([...margins].sort((a: number, b: number) => a - b))
  })
})

describe('what cannot be done is said in sentences and ends with 2', () => {
  const cases: readonly (readonly [string, () => readonly string[], RegExp])[] = [
    [
      'a file that is not there',
      () => ['derive', join(root, 'examples/sedge-66.yaml')],
      /There is no file .*sedge-66\.yaml\. Did you mean "sedge-[468]\.yaml"\?$/,
    ],
    ['a folder', () => ['derive', join(root, 'examples')], /is a folder; name the file in it, such as /],
    ['a file under a file', () => ['derive', `${coach}/x.yaml`], /There is no file/],
    ['bytes that are no text', () => ['derive', written('picture.yaml', new Uint8Array([0xff, 0xd8, 0xff, 0xe0]))], /is not text in UTF-8/],
    ['a device', () => ['derive', '/dev/zero'], /is not a file/],
    ['an empty file', () => ['derive', written('empty.yaml', '')], /empty\.yaml:1:1 /],
    ['no file', () => ['derive'], /missing required argument 'file'/],
    ['a command that is not one', () => ['chek', coach], /unknown command 'chek'[\s\S]*Did you mean check/],
    ['an option that is not one', () => ['check', coach, '--jsn'], /unknown option '--jsn'[\s\S]*Did you mean --json/],
    ['an address without a height', () => ['at', coach, 'R 5745'], /gives a station only/],
    [
      'a number that is not there',
      () => ['explain', coach, 'row.hop-F3.length'],
      /has no number row\.hop-F3\.length\. Try row\.hoop-F3\.length/,
    ],
    ['no number', () => ['explain', coach], /Say which number to explain/],
    ['a prefix that is nothing', () => ['explain', coach, 'xyz', '--list'], /No id that can be explained starts with xyz/],
    ['a schema that is not one', () => ['schema', 'desing'], /There is no schema desing;.*Did you mean "design"/],
    [
      'a part that is not there',
      () => ['prove', coach, '--part', 'strake-crow', '--holes', coach],
      /has no part strake-crow\. Near it: strake-crown/,
    ],
    [
      'a hole list that is not there',
      () => ['prove', coach, '--part', 'strake-crown', '--holes', join(folder, 'none.csv')],
      /There is no file/,
    ],
    [
      'a hole list without holes',
      () => ['prove', coach, '--part', 'strake-crown', '--holes', written('none-in.csv', 'x mm,y mm\n')],
      /none-in\.csv/,
    ],
    [
      'a tolerance of nothing',
      () => ['prove', coach, '--part', 'strake-crown', '--holes', coach, '--tolerance', '0'],
      /millimetres above 0/,
    ],
    ['a day that does not exist', () => ['packet', coach, '--out', join(folder, 'p'), '--date', '2026-02-30'], /day that exists/],
    ['a serial of nothing', () => ['packet', coach, '--out', join(folder, 'p'), '--unit', ' '], /serial of 1 to 40/],
    ['a packet without a folder', () => ['packet', coach], /required option '--out <folder>'/],
    ['a packet over other things', () => ['packet', coach, '--out', folder], /holds other things and no packet/],
    ['a packet under a file', () => ['packet', coach, '--out', join(written('plain.txt', 'x'), 'p')], /cannot be written to|is a file/],
    ['nothing at all', () => [], /Usage: coachwright/],
  ]
  for (const [name, args, sentence] of cases) {
    it(name, async () => {
      const { code, out, err } = await said(...args())
      expect([code, out]).toEqual([2, ''])
      expect(err.trim()).toMatch(sentence)
      expect(err).not.toMatch(/:\d+:\d+\)?\n\s+at |Error:|node:internal/)
    })
  }

  it('as JSON too, with the place of each fault', async () => {
    const { code, out } = await said('derive', join(root, 'examples/broken/pitch-zero.yaml'), '--json')
    expect(code).toBe(2)
    const [fault] = JSON.parse(out).faults
    expect(fault).toMatchObject({ line: 5, path: expect.stringContaining('pitch'), file: expect.stringMatching(/pitch-zero\.yaml$/) })
    const none = await said('at', coach, 'nowhere', '--json')
    expect(JSON.parse(none.out).faults).toMatchObject([{ line: null, found: 'nowhere' }])
    const usage = await said('check', '--json')
    expect(JSON.parse(usage.out).faults).toMatchObject([{ says: expect.stringContaining("missing required argument 'file'") }])
  })

  it('every broken example, each fault on a line of its own', async () => {
    const names = readdirSync(join(root, 'examples/broken')).filter((name) => name.endsWith('.yaml') && name !== 'expected.yaml')
    for (const name of names) {
      const { code, err } = await said('check', join(root, 'examples/broken', name))
      expect([name, code]).toEqual([name, 2])
      for (const line of err.trim().split('\n')) expect(line).toMatch(/^.+\.yaml:\d+:\d+ .+[.?]$/)
    }
  })
})

describe('derive, at, explain, merged, schema, prove', () => {
  it('derive says in sentences what it comes to', async () => {
    const { code, out } = await said('derive', coach)
    expect(code).toBe(0)
    expect(out).toContain('6954 mm long over all, 5867 mm in the body and 2392 mm wide')
    expect(out).toContain('4 sheets of 48 in x 152 in and 2 sheets of 36 in x 152 in')
  })

  it('at gives place, outside, through and inside', async () => {
    const { out } = await said('at', coach, 'R 5745 WL 1160', '--json')
    const found = JSON.parse(out)
    expect(found.place).toMatchObject({ side: 'left', station: 5.745, waterline: 1.16 })
    for (const list of ['outside', 'through', 'inside'] as const) {
      expect(found[list].length).toBeGreaterThan(0)
      for (const thing of found[list])
        expect(thing).toEqual({
          kind: expect.any(String),
          id: expect.any(String),
          sentence: expect.stringMatching(/\.$/),
          distance: expect.any(Number),
        })
    }
    expect((await said('at', coach, 'R 5745 WL 1160')).out).toContain('In the cut of RW3')
    expect((await said('at', coach, 'R 226 in WL 45.7 in', '--inch')).out).toMatch(/\d in behind F5/)
  })

  it('explain shows the working, and its JSON the same number', async () => {
    expect((await said('explain', coach, 'row.hoop-F3.strength')).out).toContain('P = min(P_s, P_b)')
    const { value, unit, working } = JSON.parse((await said('explain', coach, 'total.mass', '--json')).out)
    expect([value, unit]).toEqual([working.value, 'kg'])
    expect(working.inputs.length).toBeGreaterThan(5)
    const listed = (await said('explain', coach, '--list')).out.split('\n')
    expect(listed.length).toBeGreaterThan(500)
    expect((await said('explain', coach, listed.find((line) => line.startsWith('check.'))!.split(' ')[0])).out).toMatch(/verdict: /)
  })

  it('merged prints a definition that gives the same coach', async () => {
    const whole = written('whole.yaml', (await said('merged', coach)).out)
    const revision = async (file: string): Promise<string> => JSON.parse((await said('check', file, '--json')).out).coach.revision
    expect(await revision(whole)).toBe(await revision(coach))
    expect(JSON.parse((await said('merged', coach, '--json')).out).frames[1].station).toBe(3.61)
  })

  it('schema prints each of its schemas', async () => {
    for (const which of [[], ['design'], ['definition'], ['merged'], ['packet']]) {
      const { code, out } = await said('schema', ...which)
      expect([code, JSON.parse(out).type]).toEqual([0, 'object'])
    }
  })

  it('prove agrees with our own hole table read back, and not with one that is off', async () => {
    const tree = JSON.parse((await said('derive', coach, '--json')).out)
    const crown = tree.parts.find((p: { id: string }) => p.id === 'strake-crown')
    const list = (shift: number): string =>
      [
        'no,x mm,y mm',
        ...crown.holes.map((h: { x: number; y: number }, i: number) => `${i + 1},${h.x * 1000 + (i === 7 ? shift : 0)},${h.y * 1000}`),
      ].join('\n')
    const good = await said(
      'prove',
      coach,
      '--part',
      'strake-crown',
      '--holes',
      written('good.csv', list(0)),
      '--drawing',
      join(folder, 'proof.svg'),
    )
    expect([good.code, good.out.includes('AGREES')]).toEqual([0, true])
    expect(readFileSync(join(folder, 'proof.svg'), 'utf8')).toContain('<svg')
    const off = await said('prove', coach, '--part', 'strake-crown', '--holes', written('off.csv', list(0.9)), '--json')
    expect([off.code, JSON.parse(off.out).verdict]).toEqual([1, 'disagrees'])
  })

  it('every command has help with an example that names it', async () => {
    for (const name of ['open', 'derive', 'check', 'packet', 'at', 'explain', 'prove', 'schema', 'merged']) {
      const { code, out } = await said(name, '--help')
      expect([name, code]).toEqual([name, 0])
      expect(out).toMatch(new RegExp(`Examples?:\\n  coachwright ${name} `))
    }
    expect((await said('--help')).out).toContain('Examples:')
    expect((await said('--version')).out).toMatch(/^\d+\.\d+\.\d+/)
  })
})

describe('packet', () => {
  it('writes what its manifest lists, for the unit and day asked for', async () => {
    const out = join(folder, 'packet')
    const { code, out: text } = await said(
      'packet',
      join(root, 'examples/sedge-4.yaml'),
      '--out',
      out,
      '--unit',
      '0042',
      '--date',
      '2026-04-01',
    )
    expect([code, text.includes('cover.pdf first')]).toEqual([0, true])
    const { manifest, faults } = readManifest(readFileSync(join(out, 'packet.json'), 'utf8'))
    expect(faults).toEqual([])
    expect(manifest).toMatchObject({ unit: '0042', date: '2026-04-01', coach: 'Sedge 4' })
    for (const { path } of manifest!.documents) expect(existsSync(join(out, path))).toBe(true)
  })
})

describe('a bug of the program', () => {
  it('ends with 3 in one sentence and no stack trace', async () => {
    const err: string[] = []
    const broken = {
      out: () => {
        throw new TypeError('no\n  ink')
      },
      err: (text: string) => void err.push(text),
      isWatched: false,
    }
    expect(await run(['schema'], broken)).toBe(3)
    expect(err.join('')).toMatch(
      /^Coachwright met something it was not made for and stopped: no ink\. .*looks after Coachwright for you\.$/,
    )
  })
})
