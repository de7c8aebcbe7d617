/** How many cases a property test tries: the number written, or ten times that under `npm run proof`. */
const isProof = process.env.COACHWRIGHT_PROOF === '1'

export const count = (cases: number): number => (isProof ? cases * 10 : cases)
