import { makeStyles, tokens } from "@fluentui/react-components";
import type { DueEntry, DueLists, DueUnknown } from "../../../audit/lists/dueLists";
import { Disclosure } from "../../kit/Disclosure";
import { SeverityMark } from "../../kit/SeverityMark";
import { count, counted } from "../report";
import { placeName, type Jump } from "../useJump";
import { CylinderList, type ListedCylinder } from "./CylinderList";
import { dayInWords } from "./dayInWords";

const useStyles = makeStyles({
  text: { margin: 0, fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  marked: { display: "inline-flex", alignItems: "center", gap: "6px" },
});

/** What is out of date today, and what falls due; by owner, so that one call does for all their cylinders. */
export function DueView({ due, jump }: { due: DueLists; jump: Jump }) {
  const styles = useStyles();
  const { asOf, outOfDate, dueWithin, notKnown } = due;
  return (
    <>
      <p className={styles.text}>
        As of {dayInWords(asOf)}, by owner. A cylinder filled while it was in date may stand here.
      </p>
      <Group
        title="Out of date today"
        mark="breach"
        cylinders={outOfDate.map(asListed)}
        jump={jump}
        initiallyOpen
      />
      {dueWithin.map(({ days, entries }, at) => (
        <Group
          key={days}
          title={at === 0 ? `Due in ${days} days` : `Due in ${dueWithin[at - 1]!.days + 1} to ${days} days`}
          cylinders={entries.map(asListed)}
          jump={jump}
        />
      ))}
      <Group title="Not known" mark="not checked" cylinders={notKnown.map(asUnknown)} jump={jump} />
    </>
  );
}

interface GroupProps {
  readonly title: string;
  readonly mark?: "breach" | "not checked";
  readonly cylinders: readonly ListedCylinder[];
  readonly jump: Jump;
  readonly initiallyOpen?: boolean;
}

function Group({ title, mark, cylinders, jump, initiallyOpen = false }: GroupProps) {
  const styles = useStyles();
  if (cylinders.length === 0) return <p className={styles.text}>{title}: none.</p>;
  return (
    <Disclosure
      heading="h3"
      title={
        <span className={styles.marked}>
          {mark && <SeverityMark mark={mark} />}
          {title}: {count(cylinders.length)}
        </span>
      }
      initiallyOpen={initiallyOpen}
    >
      <CylinderList label={title} copied="list" cylinders={cylinders} jump={jump} />
    </Disclosure>
  );
}

function asListed({
  serial,
  owner,
  test,
  last,
  sinceManufacture,
  until,
  daysLeft,
  cell,
}: DueEntry): ListedCylinder {
  const since = sinceManufacture ? `made ${last}` : last;
  const when = daysLeft < 0 ? `ran out on ${dayInWords(until)}` : `good until ${dayInWords(until)}`;
  return {
    serial,
    owner,
    says: `${capital(test)} ${since}, ${when}.`,
    about: `${daysLeft < 0 ? `${counted(-daysLeft, "day")} ago` : `${counted(daysLeft, "day")} left`} · ${placeName(cell)}`,
    cell,
  };
}

function asUnknown({ serial, owner, test, why, cell }: DueUnknown): ListedCylinder {
  return {
    serial,
    owner,
    mark: "not checked",
    says: `${capital(test)}: ${why}`,
    about: placeName(cell),
    cell,
  };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
