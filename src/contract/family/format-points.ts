import { type FluidFill, type HardPoint, type Joint, type Origin, type TornShare, usualRateDeviation } from "#vehicle";
import { exactDampingPerMm, exactDegrees, exactMm, exactPerDegree, exactPerMm } from "./exact-figure.ts";
import { type AxleDefaults, type TornShares, tornGrades } from "./read-points.ts";

type Triple = readonly [number, number, number];
type Written = [number, number, number];

export function formatPlace(place: Triple): Written {
  return [exactMm(place[0]), exactMm(place[1]), exactMm(place[2])];
}

/** The short form where the axle's defaults say the rest. */
export function formatPoint(point: HardPoint, defaults: AxleDefaults) {
  const sameOrigin = point.origin === defaults.origin;
  const sameSd = sameOrigin && defaults.sd !== null && sameTriple(point.sd, defaults.sd);
  if (sameSd) return formatPlace(point.at);
  return {
    at_mm: formatPlace(point.at),
    sd_mm: formatPlace(point.sd),
    ...(!sameOrigin && { origin: point.origin }),
  };
}

export function formatJoint(joint: Joint, defaults: AxleDefaults) {
  const sameOrigin = joint.rateOrigin === defaults.rateOrigin;
  const isBush = joint.kind === "bush" || joint.kind === "hydraulic-bush";
  const torn = joint.tornShare ?? {};
  const readBack = isBush ? defaults.tornShare : {};
  return {
    kind: joint.kind,
    ...(joint.radial !== undefined && { radial_n_per_mm: exactPerMm(joint.radial) }),
    ...(joint.axial !== undefined && { axial_n_per_mm: exactPerMm(joint.axial) }),
    ...(joint.axis && { axis: [...joint.axis] as Written }),
    ...(joint.voided && {
      voided_n_per_mm: exactPerMm(joint.voided.rate),
      clocking_deg: exactDegrees(joint.voided.clocking),
    }),
    ...(joint.conical !== undefined && { conical_nm_per_deg: exactPerDegree(joint.conical) }),
    ...(joint.torsional !== undefined && { torsional_nm_per_deg: exactPerDegree(joint.torsional) }),
    ...(joint.hardness !== undefined && { hardness_shore_a: joint.hardness }),
    ...(!(sameOrigin && joint.rateSdShare === defaults.rateSdShare) && { rate_sd_share: joint.rateSdShare }),
    ...(!sameOrigin && { rate_origin: joint.rateOrigin }),
    ...(!sameTornShares(torn, readBack) && { torn_share: formatTornShares(torn, joint.rateOrigin) }),
    ...(joint.fluid && { fluid: formatFluid(joint.fluid, joint.rateOrigin) }),
    ...(joint.outerDiameter !== undefined && { outer_diameter_mm: exactMm(joint.outerDiameter) }),
    ...(joint.length !== undefined && { length_mm: exactMm(joint.length) }),
    ...(joint.label !== undefined && { label: joint.label }),
  };
}

function formatFluid(fluid: FluidFill, defaultOrigin: Origin) {
  return {
    volume_n_per_mm: exactPerMm(fluid.volume),
    inertia_kg: fluid.inertia,
    damping_n_s_per_mm: exactDampingPerMm(fluid.damping),
    loss_factor: fluid.lossFactor,
    ...(fluid.sdShare !== usualRateDeviation[fluid.origin] && { sd_share: fluid.sdShare }),
    ...(fluid.origin !== defaultOrigin && { origin: fluid.origin }),
  };
}

export function formatTornShares(shares: TornShares, defaultOrigin: Origin) {
  const written: Partial<Record<(typeof tornGrades)[number][0], ReturnType<typeof formatTornShare>>> = {};
  for (const [word, grade] of tornGrades) {
    const share = shares[grade];
    if (share) written[word] = formatTornShare(share, defaultOrigin);
  }
  return written;
}

function formatTornShare(share: TornShare, defaultOrigin: Origin) {
  return share.origin === defaultOrigin
    ? ([share.low, share.high] as [number, number])
    : { low_share: share.low, high_share: share.high, origin: share.origin };
}

export function sameTriple(a: Triple, b: Triple): boolean {
  return a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
}

function sameTornShares(a: TornShares, b: TornShares): boolean {
  return tornGrades.every(([, grade]) => {
    const one = a[grade];
    const other = b[grade];
    return one === other || (one?.low === other?.low && one?.high === other?.high && one?.origin === other?.origin);
  });
}
