import { SEVERITIES, type Finding } from "../../../../audit/judge/finding";
import { countryRules } from "../../../../cylinders/countryRules";
import { Disclosure } from "../../../kit/Disclosure";
import { SEVERITY_WORDS } from "../../../kit/SeverityMark";
import type { ComparedRules, Differences } from "../../../../session/questions/rehearsal";
import { count } from "../../report";
import { ruleInWords } from "../../../../audit/rules/ruleInWords";
import { placeName, type Jump } from "../../useJump";
import { CylinderList, type ListedCylinder } from "../CylinderList";
import { dayInWords } from "../dayInWords";
import { useFormStyles } from "./useFormStyles";

interface SideBySideProps {
  readonly answer: ComparedRules;
  /** The code of the country whose rules hold. */
  readonly now: string;
  readonly jump: Jump;
}

/** The sums under both, and what would be found besides, no longer, or weighed differently. */
export function SideBySide({ answer, now, jump }: SideBySideProps) {
  const styles = useFormStyles();
  const other = countryRules(answer.country).name;
  const there = answer.country === now ? "With the limits tried" : other;
  return (
    <section className={styles.answer} aria-label="Side by side">
      <table className={styles.table}>
        <caption>Findings now, and as tried</caption>
        <thead>
          <tr>
            <th scope="col">Severity</th>
            <th scope="col">Now</th>
            <th scope="col">{there}</th>
          </tr>
        </thead>
        <tbody>
          {SEVERITIES.map((severity) => (
            <tr key={severity}>
              <th scope="row">{SEVERITY_WORDS[severity]}</th>
              <td>{count(answer.now[severity])}</td>
              <td>{count(answer.then[severity])}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">Not checked</th>
            <td>{count(answer.now.notChecked)}</td>
            <td>{count(answer.then.notChecked)}</td>
          </tr>
        </tbody>
      </table>
      <DifferenceList title="Only as tried" all={answer.appear} asListed={asListed} jump={jump} />
      <DifferenceList title="Only now" all={answer.vanish} asListed={asListed} jump={jump} />
      <DifferenceList
        title="Weighed differently"
        all={answer.change}
        asListed={({ now: before, then }) => {
          const listed = asListed(then);
          return { ...listed, says: `${SEVERITY_WORDS[before.severity]} now. ${listed.says}` };
        }}
        jump={jump}
      />
      {answer.lessChecked.length > 0 && (
        <Disclosure heading="h3" title={`Less checked as tried: ${count(answer.lessChecked.length)} reasons`}>
          <ul>
            {answer.lessChecked.map(({ rule, why, count: fills }, at) => (
              <li key={at}>
                {count(fills)}: {why} ({ruleInWords(rule)})
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </section>
  );
}

interface DifferenceListProps<T> {
  readonly title: string;
  readonly all: Differences<T>;
  readonly asListed: (difference: T) => ListedCylinder;
  readonly jump: Jump;
}

function DifferenceList<T>({ title, all, asListed: listed, jump }: DifferenceListProps<T>) {
  const styles = useFormStyles();
  if (all.count === 0) return <p className={styles.line}>{title}: none.</p>;
  const hint = all.count > all.first.length ? `The first ${all.first.length}, the gravest first` : undefined;
  return (
    <Disclosure heading="h3" title={`${title}: ${count(all.count)}`} hint={hint}>
      <CylinderList label={title} copied="list" cylinders={all.first.map(listed)} jump={jump} />
    </Disclosure>
  );
}

function asListed({ serial, severity, message, rule, fillDate, cell }: Finding): ListedCylinder {
  return {
    serial: serial === "" ? "Serial not read" : serial,
    owner: dayInWords(fillDate),
    mark: severity,
    says: message,
    about: `${ruleInWords(rule)} · ${placeName(cell)}`,
    cell,
  };
}
