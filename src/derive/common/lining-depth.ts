/** How deep the lining lies: what stands between it and the outer mould line. m. */
import type { EndsDefinition, ShellDefinition } from '../../definition/types.js'

/** Its outer face in the barrel: skin, frame, tape. */
export const liningDepth = ({ shell }: { readonly shell: ShellDefinition }): number =>
  shell.skin.thickness.value + shell.frame.height + shell.tape

/** Its outer face in an end: a skin or two, a rib, tape. */
export const endLiningDepth = ({ ends, shell }: { readonly ends: EndsDefinition; readonly shell: ShellDefinition }, skins = 1): number =>
  skins * ends.skin.thickness.value + shell.frame.height + shell.tape
