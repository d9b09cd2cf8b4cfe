/* eslint-disable @typescript-eslint/no-explicit-any */
// Written by scripts/generate-function-docs.ts from the definitions of the worksheet functions: do not edit.
// Microsoft's generator reads it to make functions.json. Everything is any[][], so that a single value, a column and a
// table all arrive; a trailing underscore marks a name that TypeScript reserves.

/**
 * The usual name of a gas from its oxygen and helium, both as fractions or both in per cent. Example: =BRIM.MIX(18,45)
 * @customfunction MIX MIX
 * @param {any[][]} oxygen Oxygen: 0.18 or 18, or the gas as text.
 * @param {any[][]} [helium] Helium, written as the oxygen is: 0.45 or 45. 0 if left out.
 * @returns {any[][]}
 */
export declare function MIX(oxygen: any[][], helium?: any[][]): any[][];

/**
 * How much of one gas a mix holds, in per cent. Example: =BRIM.MIXPART("TX 18/45","nitrogen")
 * @customfunction MIXPART MIXPART
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} part "oxygen", "helium" or "nitrogen".
 * @returns {any[][]}
 */
export declare function MIXPART(mix: any[][], part: any[][]): any[][];

/**
 * Maximum operating depth: the deepest the mix may be breathed. Not rounded; for a label round down. Example: =BRIM.MOD("EAN32","ft")
 * @customfunction MOD MOD
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [maxPpO2] Highest oxygen partial pressure. 1.4 if left out.
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function MOD(mix: any[][], units: any[][], maxPpO2?: any[][], water?: any[][]): any[][];

/**
 * Shallowest depth at which the mix can be breathed; 0 for anything not hypoxic. Example: =BRIM.MINDEPTH("TX 10/50","m")
 * @customfunction MINDEPTH MINDEPTH
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [minPpO2] Lowest oxygen partial pressure. 0.18 if left out.
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function MINDEPTH(mix: any[][], units: any[][], minPpO2?: any[][], water?: any[][]): any[][];

/**
 * Oxygen partial pressure (ppO2) at a depth. Example: =BRIM.OXYGENPP(100,"EAN32","ft")
 * @customfunction OXYGENPP OXYGENPP
 * @param {any[][]} depth Depth, in feet or metres.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function OXYGENPP(depth: any[][], mix: any[][], units: any[][], water?: any[][]): any[][];

/**
 * Richest mix for a depth, in whole per cent of oxygen. Example: =BRIM.BESTMIX(33,"m")
 * @customfunction BESTMIX BESTMIX
 * @param {any[][]} depth Depth, in feet or metres.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [maxPpO2] Highest oxygen partial pressure. 1.4 if left out.
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function BESTMIX(depth: any[][], units: any[][], maxPpO2?: any[][], water?: any[][]): any[][];

/**
 * Equivalent air depth: where air, taken as 79 % nitrogen, has the mix's nitrogen pressure. Example: =BRIM.EAD(24,"EAN34","m")
 * @customfunction EAD EAD
 * @param {any[][]} depth Depth, in feet or metres.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function EAD(depth: any[][], mix: any[][], units: any[][], water?: any[][]): any[][];

/**
 * Equivalent narcotic depth: where air is as narcotic as the mix. Example: =BRIM.END(60,"TX 18/45","m")
 * @customfunction END END
 * @param {any[][]} depth Depth, in feet or metres.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [oxygenNarcotic] Count oxygen as narcotic? TRUE or FALSE. TRUE if left out.
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function END(
  depth: any[][],
  mix: any[][],
  units: any[][],
  oxygenNarcotic?: any[][],
  water?: any[][],
): any[][];

/**
 * Density of the gas as breathed at depth, in g/L: 5.2 is the recommended limit, 6.2 the highest. Example: =BRIM.GASDENSITY(30,"air","m")
 * @customfunction GASDENSITY GASDENSITY
 * @param {any[][]} depth Depth, in feet or metres.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [water] "salt" or "fresh". "salt" if left out.
 * @returns {any[][]}
 */
export declare function GASDENSITY(depth: any[][], mix: any[][], units: any[][], water?: any[][]): any[][];

/**
 * Plans a fill by partial pressure: a table of steps with the gauge reading at which each stops. Example: =BRIM.FILLSTEPS("empty",,3000,32,"psi")
 * @customfunction FILLSTEPS FILLSTEPS
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN32, TX 18/45.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [topMix] The gas on top, from the compressor or a bank. "air" if left out.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [oxygenSupply] What the oxygen supply delivers: 93, 99.5. 100 if left out.
 * @param {any[][]} [order] "helium first" or "oxygen first". "helium first" if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function FILLSTEPS(
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  units: any[][],
  topMix?: any[][],
  temperature?: any[][],
  oxygenSupply?: any[][],
  order?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Pressure of one gas to add in a fill by partial pressure: one cell, for tables of fills. Example: =BRIM.ADDGAS("oxygen","empty",,3000,32,"psi")
 * @customfunction ADDGAS ADDGAS
 * @param {any[][]} gas "oxygen", "helium" or "top".
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN32, TX 18/45.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [topMix] The gas on top, from the compressor or a bank. "air" if left out.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [oxygenSupply] What the oxygen supply delivers: 93, 99.5. 100 if left out.
 * @param {any[][]} [order] "helium first" or "oxygen first". "helium first" if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function ADDGAS(
  gas: any[][],
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  units: any[][],
  topMix?: any[][],
  temperature?: any[][],
  oxygenSupply?: any[][],
  order?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Gauge reading at which one gas of a fill by partial pressure stops, with all readings settled. Example: =BRIM.STOPAT("oxygen","empty",,3000,32,"psi")
 * @customfunction STOPAT STOPAT
 * @param {any[][]} gas "oxygen", "helium", "top", or "drain".
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN32, TX 18/45.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [topMix] The gas on top, from the compressor or a bank. "air" if left out.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [oxygenSupply] What the oxygen supply delivers: 93, 99.5. 100 if left out.
 * @param {any[][]} [order] "helium first" or "oxygen first". "helium first" if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function STOPAT(
  gas: any[][],
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  units: any[][],
  topMix?: any[][],
  temperature?: any[][],
  oxygenSupply?: any[][],
  order?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * The mix after topping off with one gas. Example: =BRIM.MIXAFTER(80,"EAN32",200,"air","bar")
 * @customfunction MIXAFTER MIXAFTER
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} topMix The gas that goes in: air, EAN32.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [answer] "oxygen" or "helium" in per cent, or "mix" as text. "oxygen" if left out.
 * @param {any[][]} [startTemperature] Temperature of the start reading. 70 °F or 20 °C if left out.
 * @param {any[][]} [endTemperature] Temperature of the end reading. As startTemperature if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function MIXAFTER(
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  topMix: any[][],
  units: any[][],
  answer?: any[][],
  startTemperature?: any[][],
  endTemperature?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * The single gas to top with so that the ordered mix results. Example: =BRIM.TOPWITH(50,"EAN32",200,"EAN36","bar")
 * @customfunction TOPWITH TOPWITH
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN36, TX 18/45.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [answer] "oxygen" or "helium" in per cent, or "mix" as text. "oxygen" if left out.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function TOPWITH(
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  units: any[][],
  answer?: any[][],
  temperature?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Gauge reading to drain to, so that topping alone gives the mix; or, with a bank pressure, so that the oxygen stop is within the bank. Example: =BRIM.DRAINTO(150,"EAN36",200,"EAN32","bar")
 * @customfunction DRAINTO DRAINTO
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN32, TX 18/45.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [topMix] The gas on top, from the compressor or a bank. "air" if left out.
 * @param {any[][]} [oxygenBankPressure] What the oxygen bank still has; without it, by topping alone.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function DRAINTO(
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  units: any[][],
  topMix?: any[][],
  oxygenBankPressure?: any[][],
  temperature?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * The mix after any sequence of gases and gauge readings; hot readings count at their own temperature. Example: =BRIM.MIXOF({"air",0;"oxygen",405;"air",3000},"psi")
 * @customfunction MIXOF MIXOF
 * @param {any[][]} steps Rows in the order of work: gas (or drain), gauge reading after it, and if you like the temperature of that reading. Row 1 is what is in the cylinder before.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [answer] "oxygen" or "helium" in per cent, or "mix" as text. "oxygen" if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function MIXOF(steps: any[][], units: any[][], answer?: any[][], gasModel?: any[][]): any[][];

/**
 * Gauge reading after a closed cylinder has cooled or warmed. Example: =BRIM.SETTLED(3300,"air",120,70,"psi")
 * @customfunction SETTLED SETTLED
 * @param {any[][]} pressure What the gauge shows now.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} fromTemperature Temperature of the gas now.
 * @param {any[][]} toTemperature Temperature it settles at.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function SETTLED(
  pressure: any[][],
  mix: any[][],
  fromTemperature: any[][],
  toTemperature: any[][],
  units: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Gauge reading at which two connected cylinders stand equal (decanting, transfilling, equalizing). Example: =BRIM.DECANT(15,230,3,100,"air","bar")
 * @customfunction DECANT DECANT
 * @param {any[][]} donorVolume The donor, a cylinder or a bank: litres of water volume, or a size such as 12L232.
 * @param {any[][]} donorPressure What the donor's gauge shows.
 * @param {any[][]} receiverVolume The receiver: a size such as AL13, or litres of water volume.
 * @param {any[][]} receiverPressure What the receiver's gauge shows.
 * @param {any[][]} mix The gas, the same in both.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function DECANT(
  donorVolume: any[][],
  donorPressure: any[][],
  receiverVolume: any[][],
  receiverPressure: any[][],
  mix: any[][],
  units: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Oxygen flow to add to a compressor's intake for continuous blending, in the unit of the flow. Example: =BRIM.INJECT("EAN32",250)
 * @customfunction INJECT INJECT
 * @param {any[][]} mix The nitrox to make, up to 40 %.
 * @param {any[][]} intakeFlow All that the compressor draws in, oxygen included, in any unit.
 * @param {any[][]} [oxygenSupply] What the oxygen supply delivers: 93, 99.5. 100 if left out.
 * @returns {any[][]}
 */
export declare function INJECT(mix: any[][], intakeFlow: any[][], oxygenSupply?: any[][]): any[][];

/**
 * Compressibility factor of a gas: 1 for an ideal one. Example: =BRIM.ZFACTOR(232,"air","bar")
 * @customfunction ZFACTOR ZFACTOR
 * @param {any[][]} pressure Gauge reading.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [temperature] Temperature of the gas. 70 °F or 20 °C if left out.
 * @returns {any[][]}
 */
export declare function ZFACTOR(
  pressure: any[][],
  mix: any[][],
  units: any[][],
  temperature?: any[][],
): any[][];

/**
 * The first day of the month of a test stamp, as a spreadsheet date. Example: =BRIM.TESTDATE("9 A1 32 06")
 * @customfunction TESTDATE TESTDATE
 * @param {any[][]} stamp The stamp: "9 A1 32 06", "Sep-06", "2019/10", "R 10/19", or a date.
 * @param {any[][]} [order] How two bare numbers stand: "month first" or "year first".
 * @returns {any[][]}
 */
export declare function TESTDATE(stamp: any[][], order?: any[][]): any[][];

/**
 * The last day on which a cylinder may be filled by its hydro, as a spreadsheet date. Example: =BRIM.HYDRODUE("2021/10","US")
 * @customfunction HYDRODUE HYDRODUE
 * @param {any[][]} lastTest The last hydro: a stamp or a date.
 * @param {any[][]} rules Whose rules: a country code such as "US" or "GB".
 * @param {any[][]} [class_] Class as stamped, such as "3AL" or "3AA". The country's usual cylinder if left out.
 * @param {any[][]} [stampMeans] "test", or "due" where the stamp shows the next date. The country's own habit if left out.
 * @returns {any[][]}
 */
export declare function HYDRODUE(
  lastTest: any[][],
  rules: any[][],
  class_?: any[][],
  stampMeans?: any[][],
): any[][];

/**
 * The last day on which a cylinder may be filled by its visual, as a spreadsheet date. Example: =BRIM.VISUALDUE("2025/10","US")
 * @customfunction VISUALDUE VISUALDUE
 * @param {any[][]} lastVisual The last visual: a stamp or a date.
 * @param {any[][]} rules Whose rules: a country code such as "US" or "GB".
 * @param {any[][]} [class_] Class as stamped, such as "3AL" or "3AA". The country's usual cylinder if left out.
 * @param {any[][]} [stampMeans] "test", or "due" where the stamp shows the next date. The country's own habit if left out.
 * @returns {any[][]}
 */
export declare function VISUALDUE(
  lastVisual: any[][],
  rules: any[][],
  class_?: any[][],
  stampMeans?: any[][],
): any[][];

/**
 * Whether a cylinder may be filled so: OK, STOP with every reason, or UNKNOWN for whatever is blank or doubtful. Example: =BRIM.FILLCHECK("2026-10-31","2022/10","2026/03","O2 clean",32,"partial pressure","US")
 * @customfunction FILLCHECK FILLCHECK
 * @param {any[][]} fillDate Day of the fill.
 * @param {any[][]} hydro Last hydro: a stamp or a date.
 * @param {any[][]} visual Last visual: a stamp or a date.
 * @param {any[][]} oxygenRating What the cylinder may hold: AIR, 40, O2 clean.
 * @param {any[][]} mix The gas filled: 32, EAN32, air.
 * @param {any[][]} method air, premix, continuous, partial pressure or membrane.
 * @param {any[][]} rules Whose rules: a country code such as "US" or "GB".
 * @returns {any[][]}
 */
export declare function FILLCHECK(
  fillDate: any[][],
  hydro: any[][],
  visual: any[][],
  oxygenRating: any[][],
  mix: any[][],
  method: any[][],
  rules: any[][],
): any[][];

/**
 * Gas that comes out of a cylinder down to 0 on the gauge, at 1 atm and the cylinder's temperature. Example: =BRIM.FREEGAS("AL80",3000,"air","psi")
 * @customfunction FREEGAS FREEGAS
 * @param {any[][]} cylinder The cylinder: a size such as AL80, 80 cu ft or 12L232, or litres of water volume.
 * @param {any[][]} pressure What the gauge shows.
 * @param {any[][]} mix The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [temperature] Temperature of the gas. 70 °F or 20 °C if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function FREEGAS(
  cylinder: any[][],
  pressure: any[][],
  mix: any[][],
  units: any[][],
  temperature?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Volume of one gas that goes into a cylinder in a fill by partial pressure. Example: =BRIM.GASUSED("oxygen","AL80","empty",,3000,32,"psi")
 * @customfunction GASUSED GASUSED
 * @param {any[][]} gas "oxygen", "helium" or "top".
 * @param {any[][]} cylinder The cylinder: a size such as AL80, 80 cu ft or 12L232, or litres of water volume.
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN32, TX 18/45.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [topMix] The gas on top, from the compressor or a bank. "air" if left out.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [oxygenSupply] What the oxygen supply delivers: 93, 99.5. 100 if left out.
 * @param {any[][]} [gasModel] "real" (GERG-2008), or "ideal" for teaching and comparison. "real" if left out.
 * @returns {any[][]}
 */
export declare function GASUSED(
  gas: any[][],
  cylinder: any[][],
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  units: any[][],
  topMix?: any[][],
  temperature?: any[][],
  oxygenSupply?: any[][],
  gasModel?: any[][],
): any[][];

/**
 * Cost of one fill: the gas that goes in, and what every fill costs. Gas let out is neither charged nor credited. Example: =BRIM.FILLCOST("AL80","empty",,3000,32,{"oxygen",0.5;"top",0.02;"per fill",4},"psi")
 * @customfunction FILLCOST FILLCOST
 * @param {any[][]} cylinder The cylinder: a size such as AL80, 80 cu ft or 12L232, or litres of water volume.
 * @param {any[][]} startPressure What the gauge shows before the fill, or "empty" for a vented cylinder.
 * @param {any[][]} startMix The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} endMix The gas ordered: EAN32, TX 18/45.
 * @param {any[][]} prices Rows in any order: "oxygen", "helium", "top" with the price per cu ft or L, and "per fill".
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [topMix] The gas on top, from the compressor or a bank. "air" if left out.
 * @param {any[][]} [temperature] Temperature of all readings, settled. 70 °F or 20 °C if left out.
 * @param {any[][]} [oxygenSupply] What the oxygen supply delivers: 93, 99.5. 100 if left out.
 * @returns {any[][]}
 */
export declare function FILLCOST(
  cylinder: any[][],
  startPressure: any[][],
  startMix: any[][],
  endPressure: any[][],
  endMix: any[][],
  prices: any[][],
  units: any[][],
  topMix?: any[][],
  temperature?: any[][],
  oxygenSupply?: any[][],
): any[][];

/**
 * The text for the cylinder's label, from the analysis: a plan is not a label. Example: =BRIM.LABELTEXT(3000,31.9,"R.","2026-10-31","GP-0417","psi")
 * @customfunction LABELTEXT LABELTEXT
 * @param {any[][]} pressure What the gauge shows, settled.
 * @param {any[][]} analysedMix The gas as analysed: 31.9, EAN32, TX 18/45.
 * @param {any[][]} analysedBy Who analysed it: a name or initials.
 * @param {any[][]} fillDate Day of the fill.
 * @param {any[][]} serial The cylinder's serial.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} [maxPpO2] Highest oxygen partial pressure. 1.4 if left out.
 * @returns {any[][]}
 */
export declare function LABELTEXT(
  pressure: any[][],
  analysedMix: any[][],
  analysedBy: any[][],
  fillDate: any[][],
  serial: any[][],
  units: any[][],
  maxPpO2?: any[][],
): any[][];

/**
 * The gauge reading not to pass: the service pressure, or with the plus where class and last test allow it; warm gas may read more. Example: =BRIM.PRESSURELIMIT("3AL3000",3000,"psi","US")
 * @customfunction PRESSURELIMIT PRESSURELIMIT
 * @param {any[][]} class_ Class as stamped: "3AL", "3AA2400", "TC-3ALM207".
 * @param {any[][]} servicePressure Service pressure as stamped. Blank where the class holds it.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @param {any[][]} rules Whose rules: a country code such as "US" or "GB".
 * @param {any[][]} [lastTest] The last hydro with its plus: "2022/10+".
 * @param {any[][]} [temperature] Temperature of the gas. The country's reference temperature if left out.
 * @param {any[][]} [mix] The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21. "air" if left out.
 * @returns {any[][]}
 */
export declare function PRESSURELIMIT(
  class_: any[][],
  servicePressure: any[][],
  units: any[][],
  rules: any[][],
  lastTest?: any[][],
  temperature?: any[][],
  mix?: any[][],
): any[][];

/**
 * Litres of water volume of a cylinder, from the free gas its size is named for. Example: =BRIM.WATERVOLUME(77.4,3000,"psi")
 * @customfunction WATERVOLUME WATERVOLUME
 * @param {any[][]} capacity The free gas it is named for, in cu ft or L.
 * @param {any[][]} servicePressure The pressure at which it holds that.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @returns {any[][]}
 */
export declare function WATERVOLUME(capacity: any[][], servicePressure: any[][], units: any[][]): any[][];

/**
 * How many more cylinders a bank fills by equalizing (transfilling) alone. Example: =BRIM.FILLSLEFT("50 L",4000,"AL80",500,2500,"EAN32","psi")
 * @customfunction FILLSLEFT FILLSLEFT
 * @param {any[][]} bankVolume The bank: litres of water volume of all its cylinders together, or a size.
 * @param {any[][]} bankPressure What the bank's gauge shows.
 * @param {any[][]} cylinder The cylinders to fill: a size such as AL80, 80 cu ft or 12L232, or litres of water volume.
 * @param {any[][]} startPressure What is in each before, by the gauge.
 * @param {any[][]} endPressure What the gauge shall show when the fill is done and cold.
 * @param {any[][]} mix The gas, the same in all.
 * @param {any[][]} units "psi", "ft" or "us"; or "bar", "m" or "metric".
 * @returns {any[][]}
 */
export declare function FILLSLEFT(
  bankVolume: any[][],
  bankPressure: any[][],
  cylinder: any[][],
  startPressure: any[][],
  endPressure: any[][],
  mix: any[][],
  units: any[][],
): any[][];

/**
 * The sentence behind an error, or how an answer came about: what was assumed, the steps, and how far it can be off. Example: =BRIM.WHY("STOPAT","oxygen","empty",,3000,32,"psi")
 * @customfunction WHY WHY
 * @param {any[][]} function_ Name of the function in quotation marks, such as "STOPAT".
 * @param {any[][][]} arguments_ The arguments of that function, in its order.
 * @returns {any[][]}
 */
export declare function WHY(function_: any[][], arguments_: any[][][]): any[][];
