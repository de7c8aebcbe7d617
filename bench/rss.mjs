/** Loaded ahead of the program whose memory is measured: writes the process's peak, in MB, to the file COACHWRIGHT_RSS names. */
import { writeFileSync } from 'node:fs'

const KIB = 1024
process.on('exit', () => writeFileSync(process.env.COACHWRIGHT_RSS, String((process.resourceUsage().maxRSS * KIB) / 1e6)))
