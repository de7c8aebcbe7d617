/** The merged form, printed as one file that extends nothing. */
import { Document, isMap, isSeq, Scalar, type ScalarTag, type Tags, visit, type YAMLMap } from 'yaml'
import { SCHEMA } from './load-files.js'
import type { Written } from './written.js'

/** `merged` is what readDefinition gives; comments stay in the files they were written in. */
export function mergedYaml(merged: Written): string {
  const doc = new Document({ schema: SCHEMA, ...(plain(merged) as object) }, { customTags: asWritten })
  // one line an item, as the examples are written: a group of single values goes in braces
  visit(doc, {
    Map(_, node) {
      if (node !== doc.contents && isFlat(node)) node.flow = true
    },
    Seq(_, node) {
      if (!node.items.some((item) => isMap(item) || isSeq(item))) node.flow = true
    },
  })
  return doc.toString({ lineWidth: 0, flowCollectionPadding: false })
}

function isFlat(node: YAMLMap): boolean {
  return node.items.every((pair) => !isMap(pair.value) && !isSeq(pair.value))
}

/** A coach named 007 or 1.10 is not 7 or 1.1: figures are printed as they were written. */
function asWritten(tags: Tags): Tags {
  return tags.map((tag) => {
    if (typeof tag === 'string' || !/:(int|float)$/.test(tag.tag)) return tag
    return { ...(tag as ScalarTag), stringify: (item) => (item as Scalar).source ?? String(item.value) }
  })
}

function plain(node: Written): unknown {
  if (node.kind === 'scalar') {
    if (typeof node.value !== 'number') return node.value
    const figure = new Scalar(node.value)
    figure.source = node.text
    return figure
  }
  if (node.kind === 'list') return node.items.map(plain)
  // fromEntries defines, so even a key called __proto__ stays a key
  return Object.fromEntries([...node.entries].map(([key, entry]) => [key, plain(entry.value)]))
}
