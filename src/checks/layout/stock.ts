/** Strakes against the sheet they are sheared from: width, length, strips side by side, and the play of each seam. */
import type { Check } from '../../derive/nouns.js'
import { usable } from '../../derive/shell/stock-use.js'
import { capacityCheck, distanceCheck, HAIR, mm } from '../check.js'
import type { Ground } from './ground.js'

const SOURCE = 'stock sizes and trim of the definition'

export function strakesAgainstStock(ground: Ground): Check[] {
  const { input } = ground
  const checks: Check[] = []
  input.shell.strakes.forEach((strake, i) => {
    const part = ground.derived.parts.find((p) => p.id === `strake-${strake.id}` || p.id === `strake-${strake.id}-right`)
    const plate = ground.derived.shell.plates.find((p) => p.part === part?.id)
    if (!part || !plate) return
    const room = usable(strake.stock, input.stock)
    const width = plate.g1 - plate.g0
    const length = plate.x1 - plate.x0
    const across = strake.across
    const used = across * width + (across - 1) * input.stock.kerf
    const strips = across === 1 ? 'One strip' : `${across} strips side by side`
    checks.push(
      capacityCheck(
        {
          id: `stock.${strake.id}.width`,
          says: `${strips} of the ${strake.id} strake need${across === 1 ? 's' : ''} ${mm(used)} mm of ${mm(room.width)} mm usable from ${strake.stock.name}.`,
          source: SOURCE,
          concerns: [part.id],
          mend: used > room.width + HAIR ? seamPlay(ground, i) : null,
          places: [part.place],
        },
        used,
        room.width,
        'm',
      ),
    )
    const longer = input.stock.sheets.filter(
      (s) => s.length - 2 * input.stock.trim >= length - HAIR && s.width >= strake.stock.width - HAIR,
    )
    checks.push(
      capacityCheck(
        {
          id: `stock.${strake.id}.length`,
          says: `The ${strake.id} strake is ${mm(length)} mm long; ${strake.stock.name} gives ${mm(room.length)} mm.`,
          source: SOURCE,
          concerns: [part.id],
          places: [part.place],
          mend:
            length <= room.length + HAIR
              ? null
              : longer.length > 0
                ? `${longer[0].name} is long enough.`
                : `No listed stock is long enough (the longest is ${mm(Math.max(...input.stock.sheets.map((s) => s.length)))} mm): a splice or other stock.`,
        },
        length,
        room.length,
        'm',
      ),
    )
  })
  return [...checks, ...seamPlays(ground)]
}

/** The girths between which a seam may lie for the sheets above and below it both to fit their stock. */
function seamWindow(ground: Ground, seam: number): { readonly from: number; readonly to: number } {
  const { shell, stock } = ground.input
  const half = shell.lap / 2
  const wide = (k: number): number => {
    const s = shell.strakes[k]
    return (usable(s.stock, stock).width - (s.across - 1) * stock.kerf) / s.across
  }
  const above = seam === 0 ? null : shell.seams[seam - 1].girth
  const to = above === null ? wide(0) / 2 - half : above + wide(seam) - 2 * half
  const lastBelow = seam + 1 === shell.seams.length
  const below = lastBelow ? ground.derived.shell.section.sheetEdge : shell.seams[seam + 1].girth
  return { from: below - wide(seam + 1) + (lastBelow ? half : 2 * half), to }
}

function seamPlays(ground: Ground): Check[] {
  return ground.input.shell.seams.map((seam, i) => {
    const w = seamWindow(ground, i)
    const play = w.to - w.from
    const says =
      play >= -HAIR
        ? `${seam.id} lies at G ${mm(seam.girth)}; the sheets above and below it fit their stock between G ${mm(w.from)} and ${mm(w.to)}.`
        : `${seam.id} cannot be placed: the sheets above and below it are short by ${mm(-play)} mm together.`
    const inside = seam.girth >= w.from - HAIR && seam.girth <= w.to + HAIR
    // how far inside its play the seam lies; negative is outside, or what the two sheets are short of together
    const room = play < -HAIR ? play : Math.min(seam.girth - w.from, w.to - seam.girth)
    return distanceCheck(
      {
        id: `stock.${seam.id}.window`,
        says,
        source: SOURCE,
        concerns: [`strake-${ground.input.shell.strakes[i].id}`, `strake-${ground.input.shell.strakes[i + 1].id}`],
        mend: inside ? null : seamPlay(ground, i),
      },
      0,
      room,
    )
  })
}

function seamPlay(ground: Ground, strake: number): string {
  const i = Math.min(strake, ground.input.shell.seams.length - 1)
  const w = seamWindow(ground, i)
  const name = ground.input.shell.seams[i].id
  return w.to >= w.from
    ? `${name} may lie from G ${mm(w.from)} to ${mm(w.to)}.`
    : `No place of ${name} fits both sheets; they are short by ${mm(w.from - w.to)} mm: a narrower lap or flange, or wider stock.`
}
