/** `merged FILE`: the definition as one file that extends nothing, as YAML. */
import { mergedYaml } from '../../definition/merged-yaml.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'

/** With --json the definition as it is computed with: SI numbers, every default filled in. */
export const mergedCommand: Command<{ readonly json?: boolean }> = (file, options, terminal) => {
  const { definition, merged } = openCoach(file)
  terminal.out(options.json ? json(definition) : mergedYaml(merged))
  return 0
}
