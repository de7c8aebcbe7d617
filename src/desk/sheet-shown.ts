/** What a sheet shows: its sentences worst first, its figures, its papers, a page of one. */
import type { Subject } from '../checks/explain/entry.js'
import { explainable } from '../checks/explain/working.js'
import type { Design } from '../derive/design.js'
import type { PlannedDocument } from '../documents/packet/planned.js'
import { worstFirst } from '../documents/sheets/checks-list.js'
import { pageToSvg } from '../documents/svg.js'
import type { PageShown, Sentence, SheetShown } from './nouns.js'
import { isUnder, sheetPlan } from './sheets.js'

/** As many figures as a person would look through; the rest are found by asking. */
const FIGURES = 250

export function sheetShown(shown: Design, subject: Subject, plan: readonly PlannedDocument[], name: string): SheetShown {
  const { checks, figures, documents } = sheetPlan(name)
  return {
    name,
    sentences: worstFirst(shown.checks.filter(({ id }) => isUnder(id, checks))).map(sentenceOf),
    figures:
      figures.length === 0
        ? []
        : explainable(subject)
            .filter(({ id }) => isUnder(id, figures))
            .slice(0, FIGURES),
    documents: [...new Set(documents.flatMap((start) => plan.filter(({ path }) => path.startsWith(start))))].map(({ path, says }) => ({
      path,
      says,
    })),
  }
}

function sentenceOf(check: Design['checks'][number]): Sentence {
  const { id, says, verdict, margin, source, mend, concerns } = check
  return { id: `check.${id}`, says, verdict, margin, source, mend, about: concerns }
}

export function pageShown(plan: readonly PlannedDocument[], path: string, page: number): PageShown | null {
  const document = plan.find((each) => each.path === path)
  if (!document) return null
  const { says, content } = document
  if (content.kind === 'text') return { path, says, page: 0, pages: 1, svg: null, text: content.make() }
  const pages = content.make()
  const which = Math.min(pages.length - 1, Math.max(0, page))
  return { path, says, page: which, pages: pages.length, svg: pageToSvg(pages[which]), text: null }
}
