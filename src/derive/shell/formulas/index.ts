/** Every formula of the shell, by id: hand it to `explain`. */
import type { AnyFormula } from '../../../quantity/formula.js'
import * as bending from '../../common/bending.formulas.js'
import * as lengths from '../../common/lengths.formulas.js'
import * as mass from '../../common/mass.formulas.js'
import * as spacing from '../../common/spacing.formulas.js'
import * as fit from './fit.formulas.js'
import * as strength from './strength.formulas.js'
import * as surface from './surface.formulas.js'

const all: readonly AnyFormula[] = [bending, fit, lengths, mass, spacing, strength, surface].flatMap((file) => Object.values(file))

export const shellFormulas: Readonly<Record<string, AnyFormula>> = Object.freeze(Object.fromEntries(all.map((each) => [each.id, each])))
