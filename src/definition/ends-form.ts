/** The written form of the end sections, and of how well the shop punches and sets up. */
import { knownPiece } from './curve-form.js'
import * as usual from './defaults.js'
import { group, list, needs, range, usually } from './form.js'
import { angle, length, multiple, NOT_NEGATIVE, temperatureC, word } from './form-values.js'
import { sheet } from './sheet-form.js'

export const endsForm = group({
  skin: needs('skin', group(sheet), 'skin of the end sections'),
  couplerFace: needs('coupler face', length(undefined, '810 mm'), 'station of the coupler face'),
  profile: needs('profile', list(knownPiece, 1), 'centre line of an end from the crown down, outboard from the joint'),
  exponent: usually('exponent', multiple('2.6'), 'n of the plan outline |y/Y|^n + |x/L|^n = 1', usual.END_EXPONENT),
  seams: needs('seams', list(angle(NOT_NEGATIVE, '12 deg')), 'azimuths of the seam ribs of one side, from the centre line'),
  make: needs('make', word(['formed', 'wrapped']), 'gores stretch-formed, or bent over their ribs without stretching'),
  minThickness: needs('least thickness', length(undefined, '0.92 mm'), 'least thickness left after forming'),
  within: usually('within', length(NOT_NEGATIVE, '6 mm'), 'how far inside the lofted surface a wrapped skin may lie', usual.WRAPPED_WITHIN),
  cap: needs('cap', length(undefined, '450 mm'), 'crown cap along each rib from the crown'),
  lap: usually('lap', length(undefined, '25 mm'), 'full width of a gore seam', usual.GORE_LAP),
})

export const processForm = group({
  punchSigma: needs('punch sigma', length(NOT_NEGATIVE, '0.05 mm'), 'standard deviation of a punched hole, an axis'),
  drift: needs('drift a metre', length(NOT_NEGATIVE, '0.02 mm'), 'limit either way of the scale along a sheet, for each metre'),
  sheetTempC: needs('sheet', range(temperatureC('14 C'), 'from', 'to'), 'temperature of the sheet at the punch'),
  jigTempC: needs('jig', range(temperatureC('16 C'), 'from', 'to'), 'temperature of jig and body at assembly'),
  thickness: needs('thickness', length(NOT_NEGATIVE, '0.04 mm'), "limit either way of a sheet's thickness"),
  endJigSigma: needs('end jig sigma', length(NOT_NEGATIVE, '0.3 mm'), 'standard deviation of a locator of the end jig'),
  sideJigSigma: needs('side jig sigma', length(NOT_NEGATIVE, '0.15 mm'), 'standard deviation of a locator of the roof-and-side jig'),
})
