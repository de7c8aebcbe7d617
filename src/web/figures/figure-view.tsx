/** The live figure of the open sheet, where it has one; whether that or the paper is looked at. */
import { type Component, createMemo, createSignal } from 'solid-js'
import { Dynamic } from 'solid-js/web'
import { sheetName } from '../desk.js'
import { FlatsFigure } from './flats.js'
import './figures.css'
import './each-figure.css'
import { GoresFigureView } from './gores.js'
import { RoomMapFigure } from './room-map.js'
import { SectionLinesFigure } from './section-lines.js'
import { SwayLinesFigure } from './sway-lines.js'
import { WeightBarsFigure } from './weight-bars.js'

const FIGURES: Readonly<Record<string, Component>> = {
  Lines: SectionLinesFigure,
  Skins: FlatsFigure,
  Ends: GoresFigureView,
  Weight: () => (
    <>
      <WeightBarsFigure />
      <RoomMapFigure />
    </>
  ),
  Towing: SwayLinesFigure,
}

const [paperOf, setPaperOf] = createSignal<string | null>(null)

export const hasFigure = (): boolean => sheetName() in FIGURES
/** The figure comes first on every sheet that is opened anew. */
export const isFigure = (): boolean => hasFigure() && paperOf() !== sheetName()
export const showPaper = (): void => void setPaperOf(sheetName())
const showFigure = (): void => void setPaperOf(null)

export function FigureOrPaper() {
  return (
    <>
      <button type="button" aria-pressed={isFigure()} onClick={showFigure}>
        Figure
      </button>
      <button type="button" aria-pressed={!isFigure()} onClick={showPaper}>
        Paper
      </button>
    </>
  )
}

export function FigureView() {
  const shown = createMemo(() => FIGURES[sheetName()])
  return (
    <div class="figure">
      <Dynamic component={shown()} />
    </div>
  )
}
