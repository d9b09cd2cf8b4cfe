import type { CylinderMaker } from "./cylinders";
import { MODELS, type Rating, type SampleCylinder } from "./cylinders";
import type {
  FillColumn,
  FillFault,
  FillLack,
  FillMaker,
  RegisterColumn,
  SampleFill,
  Severity,
} from "./fills";

/** A fault of the register: told once, at the cylinder's row. */
export interface RegisterFault {
  readonly cylinder: SampleCylinder;
  readonly column: RegisterColumn;
  readonly rule: string;
  readonly severity: Severity;
}

/** What is wrong in the log on purpose. */
export interface Planted {
  readonly cylinders: readonly SampleCylinder[];
  readonly fills: readonly SampleFill[];
  readonly registerFaults: readonly RegisterFault[];
}

/** Puts cylinders and fills into a log, with what a check must say of them. */
export class Planter implements Planted {
  readonly cylinders: SampleCylinder[] = [];
  readonly fills: SampleFill[] = [];
  readonly registerFaults: RegisterFault[] = [];

  constructor(
    private readonly cylinderMaker: CylinderMaker,
    private readonly fillMaker: FillMaker,
  ) {}

  cylinder(
    rating: Rating,
    told: Partial<SampleCylinder> = {},
    owner = "Shop",
    model: keyof typeof MODELS = "AL80",
  ): SampleCylinder {
    const made = this.cylinderMaker.make(MODELS[model], rating, owner, told);
    this.cylinders.push(made);
    return made;
  }

  fill(...[day, set, recipe, told]: Parameters<FillMaker["make"]>): void {
    this.fills.push(this.fillMaker.make(day, set, recipe, told));
  }

  /** A fault that shows in the register, whatever is filled. */
  inRegister(cylinder: SampleCylinder, rule: string, severity: Severity, column: RegisterColumn): void {
    this.registerFaults.push({ cylinder, rule, severity, column });
  }
}

/** Faults of a fill, each a rule, a severity and the column where it shows: `V01 stop serial`. */
export function faults(...said: readonly string[]): Pick<SampleFill, "faults"> {
  return {
    faults: said.map((each): FillFault => {
      const [rule = "", severity, column = "serial"] = each.split(" ");
      return { rule, severity: severity as Severity, column: column as FillColumn };
    }),
  };
}

/** The same reason for which several rules cannot judge. */
export function lacks(rules: readonly string[], why: string, at: FillLack["at"]): readonly FillLack[] {
  return rules.map((rule) => ({ rule, why, at }));
}

/** Rules that need to know the cylinder; without it none of them can judge. */
export const NEED_THE_CYLINDER = [
  ...["O01", "O02", "O03", "O09"],
  ...["V01", "V02", "V03", "V04", "V05", "V06", "V07", "V08", "V09", "V12", "V13"],
];
