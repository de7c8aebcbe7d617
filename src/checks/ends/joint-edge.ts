/** The end's own edge at the joint against the barrel's: it lies one sheet further in (or out), and so is shorter (or longer). */
import { jointEdge } from '../../derive/ends/ends.formulas.js'
import type { Check } from '../../derive/nouns.js'
import { finding, mm } from '../check.js'
import type { EndsGround } from './ground.js'

/** Further than this from what geometry says, the end and the barrel were not made from one section; our choice, no source. m */
const AGREE = 1e-4

export function jointEdges({ derived, definition }: EndsGround): Check[] {
  const { chain } = derived.shell.section
  const { shell, ends } = definition
  const under = shell.joint.over === 'barrel'
  const depth = under ? shell.skin.thickness.value : -ends.skin.thickness.value
  const { elements, length } = chain
  const turn = elements[elements.length - 1].heading1 - elements[0].heading0
  const theory = jointEdge({ G: length, d: depth, A: turn })
  const drawn = derived.ends.jointEdge
  const agree = Math.abs(drawn - theory.value) <= AGREE
  const difference = mm(Math.abs(theory.value - 2 * length))
  return [
    finding(
      {
        id: 'ends.joint-edge',
        says: agree
          ? `The end's own edge at the joint measures ${mm(drawn)} mm outside, toe to toe, where the barrel measures ${mm(2 * length)} mm: it lies ${under ? 'under' : 'over'} it, and is ${difference} mm ${under ? 'shorter' : 'longer'}. Its holes are placed on its own length.`
          : `The end's own edge at the joint measures ${mm(drawn)} mm outside, toe to toe; one sheet ${under ? 'under' : 'over'} the barrel's ${mm(2 * length)} mm it should measure ${mm(theory.value)} mm. The holes of the joint would not meet.`,
        source: 'geometry: a parallel curve differs in length by its distance times the angle turned',
        concerns: definition.frames.flatMap((f) => (f.joint ? [`joint-${f.id}`] : [])),
        worked: [theory],
      },
      agree ? 'pass' : 'fail',
    ),
  ]
}
