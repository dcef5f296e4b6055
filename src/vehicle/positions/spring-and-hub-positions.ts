import type { PointIn } from "#quantity";
import type { Axle } from "../family.ts";
import { seatAtRideHeight } from "../seat.ts";
import { between, moved, type PositionDraft } from "./draft.ts";
import { STRUT_TOP } from "./joint-positions.ts";

/** Where marks are put along the damper, from its lower eye (0) to its top (1). Drawing only; invented. */
const LEAK_AT = 0.56;
const FUNCTION_AT = 0.3;
const BUMP_STOP_AT = 0.86;
/** Where marks are put inboard of the wheel centre, metres. Drawing only; invented. */
const BEARING_INBOARD = 0.02;
const SHAFT_SHARE_OF_HALF_TRACK = 0.62;
const HOSE_INBOARD = 0.15;
const HOSE_ABOVE = 0.06;
const HOSE_FROM_CALIPER = 0.62;

/** Damper, top mount, spring, bump stop, bearing, hose, drive shaft, bar link and level sensor of one side (points P07, P09 to P14, P24, P36, P38). */
export function springAndHubPositions(axle: Axle): PositionDraft[] {
  const { centre } = axle.wheel;
  const drafts = [...damperPositions(axle)];
  const seat = seatAtRideHeight(axle.links, axle.spring.seat);
  drafts.push(
    {
      item: "spring",
      detail: null,
      kind: "spring",
      label: "Spring and seats",
      at: between(seat, axle.spring.body.at, 0.4),
      sheet: "lower",
      joint: null,
    },
    {
      item: "wheel-bearing",
      detail: null,
      kind: "bearing",
      label: "Wheel bearing",
      at: moved(centre, 0, -BEARING_INBOARD, 0),
      sheet: "upper",
      joint: null,
    },
    {
      item: "brake-hose",
      detail: null,
      kind: "hose",
      label: "Brake hose and pipe",
      at: hosePlace(axle),
      sheet: "upper",
      joint: null,
    },
  );
  if (axle.driven) {
    drafts.push({
      item: "drive-shaft",
      detail: null,
      kind: "drive-shaft",
      label: "Drive-shaft joints and boots",
      at: [centre[0], SHAFT_SHARE_OF_HALF_TRACK * centre[1], centre[2]],
      sheet: "upper",
      joint: null,
    });
  }
  if (axle.bar) {
    drafts.push({
      item: "bar-link",
      detail: null,
      kind: "bar-link",
      label: "Anti-roll-bar link",
      at: between(axle.bar.linkLower, axle.bar.linkUpper, 0.5),
      sheet: "lower",
      joint: null,
    });
  }
  if (axle.levelSensor) {
    drafts.push({
      item: "level-sensor",
      detail: null,
      kind: "level-sensor",
      label: "Level sensor and its link",
      at: levelSensorPlace(axle),
      sheet: "upper",
      joint: null,
    });
  }
  return drafts;
}

/** A strut has no lower eye of its own; a rear axle's top mount is judged with the damper. */
function damperPositions(axle: Axle): PositionDraft[] {
  const lower = seatAtRideHeight(axle.links, axle.damper.seat);
  const top = axle.damper.body.at;
  const drafts: PositionDraft[] = [];
  if (!axle.strut) {
    const onFork = axle.name === "front" && axle.damper.seat.on !== "knuckle" && axle.driven;
    drafts.push({
      item: "damper",
      detail: "lower-bush",
      kind: "bush",
      label: onFork ? "Damper fork, lower bush" : "Damper, lower bush",
      at: lower,
      sheet: "lower",
      joint: null,
    });
  }
  if (axle.strut) {
    drafts.push({
      item: "strut",
      detail: "top-mount",
      kind: "strut-mount",
      label: "Strut, top mount",
      at: axle.strut.top.at,
      sheet: "upper",
      joint: { link: STRUT_TOP, end: "inner" },
    });
  } else if (axle.name === "front") {
    drafts.push({
      item: "damper",
      detail: "top-mount",
      kind: "strut-mount",
      label: "Damper, top mount",
      at: top,
      sheet: "upper",
      joint: null,
    });
  }
  drafts.push(
    {
      item: "damper",
      detail: "leak",
      kind: "damper",
      label: "Damper, leak",
      at: between(lower, top, LEAK_AT),
      sheet: "upper",
      joint: null,
    },
    {
      item: "damper",
      detail: "function",
      kind: "damper",
      label: "Damper, function",
      at: between(lower, top, FUNCTION_AT),
      sheet: "upper",
      joint: null,
    },
    {
      item: "bump-stop",
      detail: null,
      kind: "bump-stop",
      label: "Bump stop",
      at: between(lower, top, BUMP_STOP_AT),
      sheet: "upper",
      joint: null,
    },
  );
  return drafts;
}

function hosePlace(axle: Axle): PointIn<"vehicle"> {
  const towardCaliper = axle.brake.caliperAt === "front" ? 1 : -1;
  return moved(
    axle.wheel.centre,
    (towardCaliper * HOSE_FROM_CALIPER * axle.brake.discDiameter) / 2,
    -HOSE_INBOARD,
    HOSE_ABOVE,
  );
}

/** On the first upper link that is not steered, else on the first link. */
function levelSensorPlace(axle: Axle): PointIn<"vehicle"> {
  const link = axle.links.find((candidate) => candidate.sheet === "upper" && !candidate.steered) ?? axle.links[0];
  return link ? between(link.inner.at, link.outer.at, 0.35) : axle.wheel.centre;
}
