import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readClassStamp } from "../../src/cylinders/classStamp";
import { readCylinderSize } from "../../src/cylinders/readCylinderSize";
import { servicePressure } from "../../src/cylinders/servicePressure";
import { absoluteBar, gaugeReading } from "../../src/gas/units";

const psi = (gauge: number) => absoluteBar(gauge, "us");

function known(figurePsi?: number, stamp?: string, size?: string) {
  const found = servicePressure({
    figureBar: figurePsi === undefined ? undefined : psi(figurePsi),
    stamp: stamp === undefined ? undefined : readClassStamp(stamp),
    size: size === undefined ? undefined : readCylinderSize(size),
  });
  return (
    found && [
      Math.round(gaugeReading(found.bar, "us")),
      found.from,
      ...found.contradicted.map(({ from }) => from),
    ]
  );
}

describe("the service pressure of a cylinder", () => {
  it.each([
    [undefined, undefined, undefined, undefined],
    [undefined, "3AL", undefined, undefined],
    [undefined, "3AL3000", undefined, [3000, "stamp"]],
    [undefined, undefined, "AL80", [3000, "size"]],
    [undefined, undefined, "12L232", [3365, "size"]],
    [undefined, undefined, "12", undefined],
    [undefined, undefined, "D12", undefined],
    [undefined, undefined, "2xAL80", [3000, "size"]],
    [3000, "3AL3000", "AL80", [3000, "stamp"]],
    [3000, "TC-3ALM207", "AL80", [3000, "stamp"]],
    [6000, undefined, "AL80", [3000, "size", "figure"]],
    [3300, "DOT-3AL-3000", undefined, [3000, "stamp", "figure"]],
    [2640, undefined, "LP85", [2400, "size"]],
    [3000, undefined, "LP85", [2400, "size", "figure"]],
    [2640, "3AA2400", undefined, [2400, "stamp", "figure"]],
  ])("figure %s psi, stamp %s, size %s: %j", (figure, stamp, size, expected) => {
    expect(known(figure, stamp, size)).toEqual(expected);
  });

  it("is never above any of what is known", () => {
    const pressure = fc.integer({ min: 1500, max: 4500 });
    fc.assert(
      fc.property(pressure, pressure, (figure, stamped) => {
        const found = servicePressure({ figureBar: psi(figure), stamp: readClassStamp(`3AL${stamped}`) })!;
        expect(found.bar).toBe(Math.min(psi(figure), psi(stamped)));
        expect(found.contradicted.length > 0).toBe(Math.abs(figure - stamped) > 15);
      }),
    );
  });
});
