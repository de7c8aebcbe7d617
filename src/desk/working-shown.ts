/** A figure opened: what it is, its formula in symbols and with figures, its source, and every input, which opens in turn. */
import { inputsOf, type Link, type LinkInput, linkOf } from '../checks/explain/chain.js'
import { designFormulas } from '../checks/explain/design-formulas.js'
import { idOfWorked } from '../checks/explain/entries.js'
import type { Subject } from '../checks/explain/entry.js'
import { UNNAMED } from '../checks/explain/given.js'
import { DEFAULT, type Given } from '../checks/explain/given-nouns.js'
import { working } from '../checks/explain/working.js'
import { pathOf } from '../definition/set-in-text.js'
import type { Written } from '../definition/written.js'
import type { Check } from '../derive/nouns.js'
import { boughtName, display } from '../quantity/display.js'
import { explain } from '../quantity/explain.js'
import type { UnitSystem } from '../quantity/format.js'
import { margin as marginWords } from '../ripple/words.js'
import { fieldOf } from './field-shown.js'
import type { InputShown, WorkingShown } from './nouns.js'

/** A total of more is not written out: its terms stand below it. */
const WRITTEN_OUT = 6

export function workingShown(subject: Subject, merged: Written | null, id: string, units: UnitSystem): WorkingShown {
  const found = working(subject, id)
  if (found.kind === 'none') return { ...NOTHING, id, says: found.says, near: found.near }
  if (found.kind === 'check') return checkShown(subject, found.id, found.check, units)
  const link = linkOf(subject, id) ?? { id, says: found.says, worked: found.worked, root: id, path: [] }
  return linkShown(subject, merged, link, units)
}

const NOTHING: WorkingShown = {
  ...{ id: '', says: '', what: null, symbol: null, symbolic: null, substituted: null, because: null },
  ...{ value: null, unit: null, figure: null, source: null, cautions: [], inputs: [], near: [] },
}

function linkShown(subject: Subject, merged: Written | null, link: Link, units: UnitSystem): WorkingShown {
  const it = explain(link.worked, designFormulas, units)
  const isTotal = designFormulas[it.formula]?.kind === 'sum'
  const inputs = inputsOf(subject, link).map((each) => inputShown(merged, each, units))
  const isLong = isTotal && inputs.length > WRITTEN_OUT
  return {
    ...NOTHING,
    id: link.id,
    says: link.says,
    what: it.says,
    symbol: it.symbol,
    symbolic: isTotal ? `the sum of ${inputs.length === 1 ? 'one figure' : `${inputs.length} figures`}` : it.symbolic,
    substituted: isLong ? null : it.substituted,
    because: it.when?.replaceAll('*', '×') ?? null,
    value: it.value,
    unit: it.unit,
    figure: display(it.value, it.unit, units),
    source: `${it.source.ref}, ${it.source.at}`,
    cautions: it.cautions,
    // of a total the greatest first: what it hangs on most
    inputs: isTotal ? [...inputs].sort((a, b) => Math.abs(b.value) - Math.abs(a.value)) : inputs,
  }
}

function inputShown(merged: Written | null, { symbol, says, value, unit, working: id, given }: LinkInput, units: UnitSystem): InputShown {
  const field = merged && given ? fieldOf(merged, given.written, value, unit) : null
  const figure = display(value, unit, units)
  // a bought size keeps its name beside the figure
  const name = given ? boughtName(value, unit, units) : null
  return {
    ...{ symbol, says, value, unit, working: id, field },
    figure: name ? `${figure} (${name})` : figure,
    from: field ? field.says : given && merged ? wordsOf(merged, given) : (given?.says ?? null),
  }
}

/** What is written otherwise is no default. */
const wordsOf = (merged: Written, { says, written }: Given): string =>
  says === DEFAULT && written.some(({ steps }) => pathOf(merged, steps)) ? UNNAMED : says

/** A check compares two figures; where one of them has a working, it leads there. */
function checkShown(subject: Subject, id: string, check: Check, units: UnitSystem): WorkingShown {
  const { says, source, demand, capacity, margin, unit } = check
  const ids = check.worked.map((each, i) => idOfWorked(subject, each) ?? `${id} > ${i + 1}`)
  const taken = new Set<number>()
  const side = (symbol: string, words: string, value: number | null): readonly InputShown[] => {
    if (value === null) return []
    const at = check.worked.findIndex((each, i) => !taken.has(i) && each.unit === (unit ?? '1') && Math.abs(each.value - value) < 1e-12)
    if (at >= 0) taken.add(at)
    const figure = display(value, unit ?? '1', units)
    return [{ symbol, says: words, value, unit: unit ?? '1', figure, working: at < 0 ? null : ids[at], from: null, field: null }]
  }
  const compared = [...side('demand', 'what is asked', demand), ...side('capacity', 'what is there', capacity)]
  const rest = check.worked.flatMap((each, i): InputShown[] => {
    if (taken.has(i)) return []
    const f = designFormulas[each.formula]
    return [
      {
        ...{ symbol: f?.symbol ?? '', says: f?.says ?? null, value: each.value, unit: each.unit },
        ...{ figure: display(each.value, each.unit, units), working: ids[i], from: null, field: null },
      },
    ]
  })
  const isRatio = margin !== null && demand && capacity !== null && Math.abs(capacity / demand - 1 - margin) < 1e-9
  return {
    ...NOTHING,
    ...{ id, says, source, inputs: [...compared, ...rest] },
    ...(margin === null ? {} : { symbol: 'margin', value: margin, unit: '1', figure: marginWords(margin) }),
    ...(isRatio ? { symbolic: 'capacity / demand - 1', substituted: `${compared[1].figure} / ${compared[0].figure} - 1` } : {}),
  }
}
