/** Standard gravity, m/s^2: third general conference on weights and measures, 1901. */
export const G = 9.80665
