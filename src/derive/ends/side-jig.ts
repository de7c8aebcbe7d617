/** The roof-and-side jig: frames stand at their stations from the first one, each bearing on its own outer face. */
import type { TangentChain } from '../../maths/tangent-chain.js'
import type { Diagonal, FrameLocator, SideJig } from '../jig-nouns.js'
import type { EndInput } from './ground.js'
import { jigTolerance, jointLocators, sectionLocators } from './jig.js'

type Input = Pick<EndInput, 'shell' | 'ends' | 'frames' | 'process'>

export function sideJig(input: Input, chain: TangentChain): SideJig {
  const { shell } = input
  const frames = [...input.frames].sort((a, b) => a.station - b.station)
  const skin = shell.skin.thickness.value
  // where two sheets lap the frame lies under both
  const lapped = (girth: number): number => (shell.seams.some((s) => Math.abs(s.girth - girth) < shell.lap / 2) ? skin : 0)
  const seams = [...shell.seams]
  const hoop = sectionLocators(chain, skin, lapped, seams)
  const joint = sectionLocators(chain, jointLocators(input, chain)[0].depth, lapped, seams)
  const length = frames[frames.length - 1].station - frames[0].station
  return {
    frames: frames.map((f) => ({
      id: f.id,
      station: f.station,
      fromFirst: f.station - frames[0].station,
      kind: f.joint === null ? 'hoop' : 'joint',
    })),
    hoop,
    joint,
    diagonals: diagonalsOf(joint, frames[0].id, frames[frames.length - 1].id, length),
    tolerance: jigTolerance(input.process?.sideJigSigma ?? null, 'the side jig'),
  }
}

/** From the first frame to the last, across, at the floor, at the uppermost seam and from the crown; and across one frame. */
function diagonalsOf(joint: readonly FrameLocator[], first: string, last: string, length: number): Diagonal[] {
  const found = (id: string): FrameLocator | undefined => joint.find((l) => l.id === id)
  const [crown, floor] = [found('crown'), found('floor')]
  const seam = joint.find((l) => l.id !== 'crown' && l.y > 0 && l.id !== 'brow')
  const across = (id: string, a: FrameLocator | undefined, b: FrameLocator | undefined, far: number): Diagonal[] => {
    if (!a || !b) return []
    const end = far === 0 ? first : last
    const [right, left] = [Math.hypot(far, a.y - -b.y, a.z - b.z), Math.hypot(far, -a.y - b.y, a.z - b.z)]
    return [{ id, from: `${first}, ${a.says}`, to: `${end}, ${b.says}`, right, left }]
  }
  return [
    ...across('floor', floor, floor, length),
    ...(seam ? across('roof', seam, seam, length) : []),
    ...across('crown-floor', crown, floor, length),
    ...across('floor-crown', floor, crown, length),
    ...across('frame', crown, floor, 0),
  ]
}
