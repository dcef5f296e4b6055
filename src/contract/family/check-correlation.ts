import type { Finding } from "#numeric";
import { correlationAmong, factoriseCorrelation } from "#vehicle";
import { axleShape } from "./axle-schema.ts";
import { familyFinding } from "./family-finding.ts";
import { type LooseAxle, understood } from "./loose-axle.ts";

const HINT = "Leave the key out and every point has an error of its own.";

/** Whether errors of the points can hang together as a sheet says. */
export function checkCorrelation(axle: LooseAxle): Finding[] {
  const given = understood(axleShape.correlation, axle.raw.correlation);
  if (given === undefined) return [];
  const path = `${axle.name}.correlation`;
  const known = pointNames(axle);
  const unknown = given.points.flatMap((name, i) =>
    known.includes(name) && given.points.indexOf(name) === i
      ? []
      : [
          familyFinding(
            "correlation-of-unknown-point",
            `${path}.points[${i}]`,
            name,
            `each once of: ${known.join(", ")}`,
            HINT,
          ),
        ],
  );
  if (unknown.length > 0) return unknown;
  const rows = 3 * given.points.length - 1;
  const short = given.lower.findIndex((row, i) => row.length !== i + 1);
  if (given.lower.length !== rows || short >= 0) {
    const at = short >= 0 && short < rows ? short : null;
    return [
      familyFinding(
        "correlation-row-length",
        at === null ? `${path}.lower` : `${path}.lower[${at}]`,
        at === null ? `${given.lower.length} rows` : `${given.lower[at]?.length ?? 0} numbers`,
        at === null ? `${rows} rows, three a point less one` : `${at + 1} numbers`,
        HINT,
      ),
    ];
  }
  return factoriseCorrelation(correlationAmong(given, given.points)) === null
    ? [
        familyFinding(
          "correlation-impossible",
          `${path}.lower`,
          "numbers that cannot stand together",
          "correlations no combination of which has less than no variance",
          HINT,
        ),
      ]
    : [];
}

/** Hard points of an axle by the names they are kept under: ends that share a place by the first of them. */
function pointNames({ links, strut, trailingArm }: LooseAxle): readonly string[] {
  const ends = [
    ...links.flatMap(({ name, inner, outer }) => [
      { name: `${name ?? ""}.inner`, at: inner },
      { name: `${name ?? ""}.outer`, at: outer },
    ]),
    ...(strut
      ? [
          { name: "strut.top", at: strut.top },
          { name: "strut.axis-point", at: strut.axisPoint },
        ]
      : []),
    ...(trailingArm ? [{ name: "trailing-arm.bush", at: trailingArm.bush }] : []),
  ];
  const placed = ends.flatMap(({ name, at }) => (at === undefined ? [] : [{ name, place: at.join() }]));
  return placed.filter(({ place }, i) => placed.findIndex((one) => one.place === place) === i).map(({ name }) => name);
}
