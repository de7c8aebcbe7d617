/** Every formula a working of a design may hold, by id, for `explain`. */
import * as chassisFormulas from '../../derive/chassis/section.formulas.js'
import * as endsFormulas from '../../derive/ends/ends.formulas.js'
import * as wrapFormulas from '../../derive/ends/wrap.formulas.js'
import * as floorFormulas from '../../derive/floor/floor.formulas.js'
import * as gearFormulas from '../../derive/gear/gear.formulas.js'
import * as rideFormulas from '../../derive/ride/ride.formulas.js'
import { shellFormulas } from '../../derive/shell/formulas/index.js'
import * as towingFormulas from '../../derive/towing/towing.formulas.js'
import * as liftFormulas from '../../derive/weight/lift.formulas.js'
import * as weightFormulas from '../../derive/weight/weight.formulas.js'
import type { Formulas } from '../../quantity/explain.js'
import type { AnyFormula } from '../../quantity/formula.js'
import * as explainFormulas from './explain.formulas.js'

export const designFormulas: Formulas = Object.freeze({
  ...shellFormulas,
  ...Object.fromEntries(
    [
      endsFormulas,
      wrapFormulas,
      chassisFormulas,
      floorFormulas,
      gearFormulas,
      rideFormulas,
      towingFormulas,
      weightFormulas,
      liftFormulas,
      explainFormulas,
    ]
      .flatMap((file) => Object.values(file as Readonly<Record<string, AnyFormula>>))
      .map((each) => [each.id, each]),
  ),
})
