/** A sheet as it is bought: alloy with temper, and thickness. */
import { needs } from './form.js'
import { alloy, bought } from './form-values.js'

export const sheet = {
  alloy: needs('alloy', alloy('5052-H34'), 'alloy and temper'),
  thickness: needs('thickness', bought('0.81 mm'), 'thickness as it is bought'),
}
