/** Holds the coach beside the screen, so that deriving it never stops a drag. */
import { expose, transfer } from 'comlink'
import { type CoachFiles, type DeskCoach, deskCoach, type NotRead } from '../desk/desk-coach.js'
import type { Answer, Edit, Elevation, Look, MoveEdit, PageShown, RippleShown, SheetShown, State, WorkingShown } from '../desk/nouns.js'
import type { SpaceAsked, SpaceSent } from '../desk/space/sent.js'
import type { UnitSystem } from '../quantity/format.js'

/** What comes back after every edit: where the coach stands, and how it looks. */
export interface Moved {
  readonly says: string | null
  readonly state: State
  readonly elevation: Elevation
}

let held: DeskCoach | null = null

function here(): DeskCoach {
  if (!held) throw new Error('no coach is open in the worker')
  return held
}

/** The rivets go over without being copied. */
function looked(look: Look, says: string | null): Moved {
  const elevation = here().elevation(look)
  const rivets = elevation.rivets.slice()
  return transfer({ says, state: here().state(), elevation: { ...elevation, rivets } }, [rivets.buffer])
}

const desk = {
  open: (coach: CoachFiles, look: Look): Moved | NotRead => {
    const opened = deskCoach(coach)
    if ('faults' in opened) return opened
    held = opened
    return looked(look, null)
  },
  look: (look: Look): Moved => looked(look, null),
  edit: (edit: Edit, look: Look): Moved => looked(look, here().edit(edit)),
  preview: (edit: MoveEdit, look: Look): Moved => looked(look, here().preview(edit)),
  settle: (look: Look): Moved => looked(look, here().settle()),
  undo: (look: Look): Moved => {
    here().undo()
    return looked(look, null)
  },
  redo: (look: Look): Moved => {
    here().redo()
    return looked(look, null)
  },
  freeze: (name: string, units: UnitSystem): RippleShown => {
    here().freeze(name)
    return here().ripple(units)
  },
  ripple: (units: UnitSystem): RippleShown => here().ripple(units),
  sheet: (name: string): SheetShown => here().sheet(name),
  page: (path: string, page: number): PageShown | null => here().page(path, page),
  working: (id: string, units: UnitSystem): WorkingShown => here().working(id, units),
  ask: (question: string): Answer => here().ask(question),
  space: (asked: SpaceAsked): SpaceSent => here().space(asked),
}

export type DeskWorker = typeof desk

expose(desk)
