import { Disclosure } from "../../../kit/Disclosure";
import { counted } from "../../report";
import type { FurtherProps } from "./furtherProps";
import { BadAirTest } from "./BadAirTest";
import { Patterns } from "./Patterns";
import { RehearsalForm } from "./RehearsalForm";

/** What else can be asked of the log: each opens where it is wanted. */
export function FurtherView({ report, check, jump }: FurtherProps) {
  const { patterns } = report;
  const biases = patterns?.patterns.filter(({ isBias }) => isBias).length ?? 0;
  return (
    <>
      <Disclosure
        heading="h3"
        title="After a bad air test"
        hint="Who holds suspect gas, and how much of it is left"
      >
        <BadAirTest check={check} jump={jump} />
      </Disclosure>
      <Disclosure
        heading="h3"
        title="Rehearsal"
        hint="The same log under other rules or stricter limits, side by side"
      >
        <RehearsalForm report={report} check={check} jump={jump} />
      </Disclosure>
      {patterns && (
        <Disclosure
          heading="h3"
          title="House patterns"
          hint={
            biases === 0
              ? "How far blends lie from what was ordered"
              : `${counted(biases, "bias", "biases")} in how blends turn out`
          }
        >
          <Patterns patterns={patterns} />
        </Disclosure>
      )}
    </>
  );
}
