import { settled } from "../../blending/settled";
import { realGas } from "../../gas/equationOfState";
import { AIR } from "../../gas/mixture";
import { gaugeReading, kelvin } from "../../gas/units";
import { capital, degrees, gauge, mixInWords } from "../../words/figures";
import { fillCheck } from "../../audit/fillCheck";
import { countryInWords, countryRules, type CountryRules } from "../../cylinders/countryRules";
import { pressureLimit, type PressureLimit } from "../../cylinders/pressureLimit";
import { hydroDue, visualDue } from "../../cylinders/dueDates";
import { cylinderRules } from "../../cylinders/cylinderClass";
import { stampText, type TestStamp } from "../../cylinders/testStamp";
import { readMixCell } from "../../log/cells/mix";
import { readOxygenServiceCell } from "../../log/cells/oxygenService";
import { readMethod } from "../../log/cells/words";
import { methodWords, mixWords, ratingWords } from "../../log/vocabularies/meanings";
import { countryContext } from "../../log/countryContext";
import { BLANK, type Reading } from "../../log/reading";
import type { FilledCell } from "../../typed/cells";
import { defineFunction, type ValuesOf } from "../define";
import { CellReader } from "../../typed/reader";
import { asWritten, endPressure, mix, oneOf, temperature, text, units } from "../../typed/readers";
import { dayIn, logCell, serialOf, stampIn, stampReading } from "../../typed/testDates";

const STAMP_SPREADSHEET_DATE = "The answer is a spreadsheet date: format the cell as one.";

const rules = () =>
  new CellReader('Whose rules: a country code such as "US" or "GB".', (cell) => countryRules(String(cell)));
const stamp = (meaning: string) => asWritten(meaning);
const cylinderClass = () =>
  text('Class as stamped, such as "3AL" or "3AA".').orElse(() => undefined, "the country's usual cylinder");
const stampMeans = () =>
  oneOf('"test", or "due" where the stamp shows the next date.', ["test", "due"]).orElse(
    () => undefined,
    "the country's own habit",
  );

export const TESTDATE = defineFunction({
  id: "TESTDATE",
  says: "The first day of the month of a test stamp, as a spreadsheet date.",
  arguments: {
    stamp: stamp('The stamp: "9 A1 32 06", "Sep-06", "2019/10", "R 10/19", or a date.'),
    order: oneOf('How two bare numbers stand: "month first" or "year first".', [
      "month first",
      "year first",
    ]).orElse(() => undefined),
  },
  quantity: "date",
  answer: ({ stamp, order }) => serialOf(stampIn(stamp, order).month.toPlainDate({ day: 1 })),
  why: ({ stamp, order }) => [`Read as ${stampInWords(stampIn(stamp, order))}.`, STAMP_SPREADSHEET_DATE],
});

export const HYDRODUE = defineFunction({
  id: "HYDRODUE",
  says: "The last day on which a cylinder may be filled by its hydro, as a spreadsheet date.",
  arguments: {
    lastTest: stamp("The last hydro: a stamp or a date."),
    rules: rules(),
    class: cylinderClass(),
    stampMeans: stampMeans(),
  },
  quantity: "date",
  answer: (values) => serialOf(hydroDue(lastStamp(values.lastTest, values), values.rules, values.class)),
  why: (values) =>
    dueInWords(
      values,
      lastStamp(values.lastTest, values),
      hydroDue(lastStamp(values.lastTest, values), values.rules, values.class),
    ),
});

export const VISUALDUE = defineFunction({
  id: "VISUALDUE",
  says: "The last day on which a cylinder may be filled by its visual, as a spreadsheet date.",
  arguments: {
    lastVisual: stamp("The last visual: a stamp or a date."),
    rules: rules(),
    class: cylinderClass(),
    stampMeans: stampMeans(),
  },
  quantity: "date",
  answer: (values) => serialOf(visualDue(lastStamp(values.lastVisual, values), values.rules, values.class)),
  why: (values) =>
    dueInWords(
      values,
      lastStamp(values.lastVisual, values),
      visualDue(lastStamp(values.lastVisual, values), values.rules, values.class),
    ),
});

export const PRESSURELIMIT = defineFunction({
  id: "PRESSURELIMIT",
  says: "The gauge reading not to pass: the service pressure, or with the plus where class and last test allow it; warm gas may read more.",
  arguments: {
    class: text('Class as stamped: "3AL", "3AA2400", "TC-3ALM207".').mayBeBlank(),
    servicePressure: endPressure()
      .saying("Service pressure as stamped. Blank where the class holds it.")
      .mayBeBlank(),
    units: units(),
    rules: rules(),
    lastTest: stamp('The last hydro with its plus: "2022/10+".').orElse(() => undefined),
    temperature: temperature("Temperature of the gas.").orElseButZeroCounts(
      () => undefined,
      "the country's reference temperature",
    ),
    mix: mix().orElse(() => AIR, '"air"'),
  },
  quantity: "pressure",
  answer: (values) => {
    const { rules, temperature, mix, units } = values;
    const { limitBar } = limitFor(values);
    return gaugeReading(
      temperature === undefined
        ? limitBar
        : settled(realGas, mix, limitBar, kelvin(rules.referenceTemperatureC, "metric"), temperature),
      units,
    );
  },
  why: (values) => {
    const { rules, units, temperature, mix } = values;
    const { cylinder, service, limitBar, plus } = limitFor(values);
    const reference = degrees(kelvin(rules.referenceTemperatureC, "metric"), units);
    return [
      `Service pressure ${gauge(service.bar, units)}, by the ${service.from}.`,
      plus
        ? `The last test carries a plus, and the class (${cylinder.name}) may have one: 110 %, ${gauge(limitBar, units)}.`
        : values.lastTest !== undefined && limitStamp(values)?.plus
          ? `The class (${cylinder.name}) can have no plus.`
          : "Without a plus.",
      ...(cylinder.assumed ? [cylinder.assumed] : []),
      temperature === undefined
        ? `A settled reading at ${reference}, the reference temperature of ${countryInWords(rules)}.`
        : `${capital(mixInWords(mix))} that reads so at ${degrees(temperature, units)} settles at ${gauge(limitBar, units)} at ${reference}, the reference temperature of ${countryInWords(rules)}.`,
      "The stamp on the cylinder comes first.",
    ];
  },
});

interface LimitArguments {
  readonly class: string | undefined;
  readonly servicePressure: number | undefined;
  readonly rules: CountryRules;
  readonly lastTest: FilledCell | undefined;
}

function limitFor(values: LimitArguments): PressureLimit {
  return pressureLimit({
    rules: values.rules,
    cylinderClass: values.class,
    servicePressureBar: values.servicePressure,
    latestTest: limitStamp(values),
  });
}

function limitStamp({ lastTest, rules }: LimitArguments): TestStamp | undefined {
  return lastTest === undefined ? undefined : stampIn(lastTest, rules.stampOrder);
}

const FILLCHECK_ARGUMENTS = {
  fillDate: asWritten("Day of the fill.").mayBeBlank(),
  hydro: asWritten("Last hydro: a stamp or a date.").mayBeBlank(),
  visual: asWritten("Last visual: a stamp or a date.").mayBeBlank(),
  oxygenRating: asWritten("What the cylinder may hold: AIR, 40, O2 clean.").mayBeBlank(),
  mix: asWritten("The gas filled: 32, EAN32, air.").mayBeBlank(),
  method: asWritten("air, premix, continuous, partial pressure or membrane.").mayBeBlank(),
  rules: rules().mayBeBlank(),
};

export const FILLCHECK = defineFunction({
  id: "FILLCHECK",
  says: "Whether a cylinder may be filled so: OK, STOP with every reason, or UNKNOWN for whatever is blank or doubtful.",
  arguments: FILLCHECK_ARGUMENTS,
  answer: (values) => checkedFill(values).text,
  why: (values) => [
    ...(values.rules ? [`Rules: ${values.rules.name}, its usual cylinder, as on the day of the fill.`] : []),
    "Whatever is blank or can be read in two ways is not taken as good.",
  ],
});

interface StampArguments {
  readonly rules: CountryRules;
  readonly class: string | undefined;
  readonly stampMeans: TestStamp["means"] | undefined;
}

/** The stamp, which may say by itself that it shows the next date ("exp 10/24"); else it is as the country stamps. */
function lastStamp(cell: FilledCell, { rules, stampMeans = rules.stampMeans }: StampArguments): TestStamp {
  const stamp = stampIn(cell, rules.stampOrder);
  return stampMeans === "due" ? { ...stamp, means: "due" } : stamp;
}

function dueInWords(
  values: StampArguments,
  stamp: TestStamp,
  due: { toString(): string },
): readonly string[] {
  const { rules, stampMeans } = values;
  return [
    `May be filled up to ${due.toString()}.`,
    `Read as ${stampInWords(stamp)}. Rules: ${rules.name}.`,
    ...assumedOf(rules, values.class),
    ...(rules.notLaw === undefined ? [] : [rules.notLaw]),
    ...(rules.stampMeans === "due" && stampMeans === undefined
      ? [
          `Stamps in ${countryInWords(rules)} show the next date. Give "test" as stampMeans where this one shows the last.`,
        ]
      : []),
    STAMP_SPREADSHEET_DATE,
  ];
}

/** What is not known of the cylinder's kind, and by what it was judged. */
function assumedOf(rules: CountryRules, cylinderClass: string | undefined): readonly string[] {
  const { assumed } = cylinderRules(rules, { cylinderClass });
  return assumed === undefined ? [] : [assumed];
}

function stampInWords(stamp: TestStamp): string {
  const plus = stamp.plus ? ", with a plus" : "";
  const marks = stamp.marks.length > 0 ? `, marked ${stamp.marks.join(" ")}` : "";
  return `${stamp.means === "due" ? "due" : "tested"} ${stampText(stamp)}${plus}${marks}`;
}

/** Words of every language: a call does not say in which its log is kept. Made when first asked for. */
const METHODS = once(() => methodWords());
const RATINGS = once(() => ratingWords());
const MIXES = once(() => mixWords());

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}

/** The audit's own judgement, its cells read as the log reads them. */
function checkedFill(values: ValuesOf<typeof FILLCHECK_ARGUMENTS>): { readonly text: string } {
  const { rules, hydro, visual, oxygenRating, mix, method } = values;
  if (!rules) return { text: "UNKNOWN: rules are blank; write a country's, such as US or GB" };
  const habits = countryContext(rules);
  const date = dayIn(values.fillDate, habits.dateOrder);
  const latest = date.kind === "value" ? date.value.toPlainYearMonth() : undefined;
  return fillCheck(
    {
      date,
      hydro: stampReading(hydro, { ...habits, latest }),
      hydroIsDateCell: typeof hydro === "number",
      visual: stampReading(visual, { ...habits, latest }),
      oxygenService: orBlank(oxygenRating, (cell) =>
        readOxygenServiceCell(logCell(cell), { asks: "grade" }, RATINGS()),
      ),
      mix: orBlank(mix, (cell) => readMixCell(logCell(cell), { dateOrder: habits.dateOrder }, MIXES())),
      method: orBlank(method, (cell) => readMethod(logCell(cell), METHODS())),
    },
    rules,
  );
}

function orBlank<T>(cell: FilledCell | undefined, read: (cell: FilledCell) => Reading<T>): Reading<T> {
  return cell === undefined ? BLANK : read(cell);
}
