/*
 * What a filter takes out is mostly water, and saturated air carries more of it the warmer it is: a cartridge's life
 * goes with the inverse of the saturation pressure of water. Magnus form with the coefficients of Alduchov and
 * Eskridge (J. Appl. Meteorol. 35, 1996), good to 0.4 % from -40 to 50 °C.
 */

/** Air reaches the filter warmer than the room by this much: 10 °F, by owners' manuals of breathing-air compressors. */
const ABOVE_ROOM_K = (10 * 5) / 9;

/** Saturation pressure of water, in hectopascal. */
function saturationPressure(temperatureK: number): number {
  const celsius = temperatureK - 273.15;
  return 6.1094 * Math.exp((17.625 * celsius) / (celsius + 243.04));
}

/** How much longer (or, below 1, shorter) a filter lasts with air of one temperature than with air of another. */
export function filterLifeRatio(airK: number, ratedK: number): number {
  return saturationPressure(ratedK) / saturationPressure(airK);
}

/**
 * How many hours of a filter's rated life an hour of running counts for, in a room of this temperature: more than one
 * where the air is warmer than rated.
 */
export function filterHours(roomK: number, ratedK: number): number {
  return 1 / filterLifeRatio(roomK + ABOVE_ROOM_K, ratedK);
}
