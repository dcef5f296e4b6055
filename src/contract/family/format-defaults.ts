import type { Axle, HardPoint, Joint, Seat } from "#vehicle";
import { exactMm } from "./exact-figure.ts";
import { formatTornShares } from "./format-points.ts";
import type { AxleDefaults } from "./read-points.ts";

/** What most points and most rubber of an axle say, so that the file says it once. */
export function commonDefaults(axle: Axle): AxleDefaults {
  const points = hardPointsOf(axle);
  const joints = jointsOf(axle);
  const point = mostCommon(points, ({ origin, sd }) => JSON.stringify([origin, sd]));
  const rate = mostCommon(joints, ({ rateOrigin, rateSdShare }) => JSON.stringify([rateOrigin, rateSdShare]));
  const bushes = joints.filter(({ kind }) => kind === "bush" || kind === "hydraulic-bush");
  const torn = mostCommon(bushes, ({ tornShare }) => JSON.stringify(tornShare ?? {}));
  return {
    origin: point?.origin ?? "guess",
    sd: point?.sd ?? null,
    rateOrigin: rate?.rateOrigin ?? "guess",
    rateSdShare: rate?.rateSdShare ?? null,
    tornShare: torn?.tornShare ?? {},
  };
}

export function formatDefaults(defaults: AxleDefaults) {
  const torn = formatTornShares(defaults.tornShare, defaults.rateOrigin);
  return {
    origin: defaults.origin,
    ...(defaults.sd && { sd_mm: defaults.sd.map(exactMm) as [number, number, number] }),
    rate_origin: defaults.rateOrigin,
    ...(defaults.rateSdShare !== null && { rate_sd_share: defaults.rateSdShare }),
    ...(Object.keys(torn).length > 0 && { torn_share: torn }),
  };
}

function hardPointsOf(axle: Axle): HardPoint[] {
  const ofSeat = (seat: Seat): HardPoint[] => (seat.on === "link" ? [] : [seat.moving]);
  return [
    ...axle.links.flatMap(({ inner, outer }) => [inner, outer]),
    ...(axle.strut ? [axle.strut.top, axle.strut.axisPoint] : []),
    ...(axle.trailingArm ? [axle.trailingArm.bush] : []),
    axle.spring.body,
    ...ofSeat(axle.spring.seat),
    axle.damper.body,
    ...ofSeat(axle.damper.seat),
  ];
}

function jointsOf(axle: Axle): Joint[] {
  return [
    ...axle.links.flatMap(({ innerJoint, outerJoint }) => [innerJoint, outerJoint]),
    ...(axle.strut ? [axle.strut.topMount] : []),
    ...(axle.trailingArm ? [axle.trailingArm.bushJoint] : []),
  ];
}

function mostCommon<T>(items: readonly T[], keyOf: (item: T) => string): T | undefined {
  const counts = new Map<string, { item: T; count: number }>();
  for (const item of items) {
    const key = keyOf(item);
    const known = counts.get(key);
    if (known) known.count += 1;
    else counts.set(key, { item, count: 1 });
  }
  let best: { item: T; count: number } | undefined;
  for (const one of counts.values()) if (!best || one.count > best.count) best = one;
  return best?.item;
}
