import type { Finding } from "#numeric";
import { distanceMm, ONE_PLACE_MM } from "./check-points.ts";
import { jointsOf } from "./check-rubber.ts";
import { familyFinding, placeWords } from "./family-finding.ts";
import { asObject, type LooseAxle } from "./loose-axle.ts";

/**
 * Bounds beyond which a figure was probably typed in another unit (all invented, with a factor of about ten to any car).
 * They catch slips of a thousand, not bad engineering.
 */
const SHORTEST_LINK_MM = 10;
const NEAREST_POINT_MM = 5;
const STIFFEST_JOINT_N_PER_MM = 400_000;
const SOFTEST_JOINT_N_PER_MM = 20;
const STIFFEST_MEMBER_N_PER_MM = 3_000_000;
const STIFFEST_SPRING_N_PER_MM = 2000;
const LIGHTEST_CAR_KG = 20;

/** Smallest believable figure in mm of the lengths of an axle, by key. */
const leastAxleMm = { track_mm: 50, bump_stop_mm: 1, droop_stop_mm: 1, rack_travel_mm: 1 } as const;
const leastWheelMm = {
  loaded_radius_mm: 20,
  free_radius_mm: 20,
  tyre_width_mm: 10,
  rim_diameter_mm: 20,
  rim_width_mm: 10,
} as const;
const leastBrakeMm = {
  disc_diameter_mm: 20,
  disc_thickness_mm: 1,
  piston_diameter_mm: 2,
  pad_thickness_mm: 0.5,
} as const;

/** Figures of an axle that are a thousand times too small or too large for their unit. */
export function checkPlausible(axle: LooseAxle): Finding[] {
  return [
    ...smallLengths(axle.name, axle.raw, leastAxleMm),
    ...smallLengths(`${axle.name}.wheel`, asObject(axle.raw.wheel), leastWheelMm),
    ...smallLengths(`${axle.name}.brake`, asObject(axle.raw.brake), leastBrakeMm),
    ...pointsInMetres(axle),
    ...ratesInAnotherUnit(axle),
  ];
}

/** The same for the figures of the whole car. */
export function checkPlausibleCar(raw: Readonly<Record<string, unknown>>): Finding[] {
  const found = smallLengths("", raw, { wheelbase_mm: 100, cg_height_mm: 20 });
  const mass = raw.kerb_mass_kg;
  if (typeof mass === "number" && mass > 0 && mass < LIGHTEST_CAR_KG) {
    found.push(
      familyFinding(
        "looks-like-tonnes",
        "kerb_mass_kg",
        mass,
        "the mass in kilograms",
        `In kilograms this would be ${mass * 1000}.`,
      ),
    );
  }
  return found;
}

function smallLengths(
  path: string,
  raw: Readonly<Record<string, unknown>>,
  least: Readonly<Record<string, number>>,
): Finding[] {
  return Object.entries(least).flatMap(([key, smallest]) => {
    const value = raw[key];
    return typeof value === "number" && value > 0 && value < smallest
      ? [
          inMetres(
            path === "" ? key : `${path}.${key}`,
            String(value),
            "a length in millimetres",
            `In millimetres this would be ${Number((value * 1000).toPrecision(12))}.`,
          ),
        ]
      : [];
  });
}

function inMetres(path: string, got: string, needed: string, hint: string): Finding {
  return familyFinding("looks-like-metres", path, got, needed, hint);
}

/** A point of a left wheel lies hundreds of mm from the middle of the car and from the ground. */
function pointsInMetres(axle: LooseAxle): Finding[] {
  const found: Finding[] = [];
  const look = (path: string, place: readonly [number, number, number] | undefined): boolean => {
    if (!place || Math.abs(place[1]) >= NEAREST_POINT_MM || Math.abs(place[2]) >= NEAREST_POINT_MM || place[1] === 0)
      return false;
    found.push(inMetres(path, placeWords(place), "[x, y, z] in millimetres", "Multiply all three by 1000."));
    return true;
  };
  look(`${axle.name}.wheel.centre_mm`, axle.wheel?.centre_mm);
  axle.links.forEach(({ inner, outer }, index) => {
    const path = `${axle.name}.links[${index}]`;
    const said = [look(`${path}.inner_mm`, inner), look(`${path}.outer_mm`, outer)].some(Boolean);
    const length = inner && outer ? distanceMm(inner, outer) : 0;
    if (!said && length >= ONE_PLACE_MM && length < SHORTEST_LINK_MM) {
      found.push(
        inMetres(
          path,
          `a link ${Number(length.toPrecision(3))} mm long`,
          `a link longer than ${SHORTEST_LINK_MM} mm`,
          "Check whether its points were typed in metres or centimetres.",
        ),
      );
    }
  });
  look(`${axle.name}.strut.top_mm`, axle.strut?.top);
  look(`${axle.name}.strut.axis_point_mm`, axle.strut?.axisPoint);
  look(`${axle.name}.trailing_arm.bush_mm`, axle.trailingArm?.bush);
  look(`${axle.name}.spring.body_mm`, axle.spring.body);
  look(`${axle.name}.damper.body_mm`, axle.damper.body);
  return found;
}

function ratesInAnotherUnit(axle: LooseAxle): Finding[] {
  const found: Finding[] = [];
  const look = (path: string, rate: unknown, softest: number, stiffest: number): void => {
    if (typeof rate !== "number" || rate <= 0) return;
    if (rate > stiffest) {
      found.push(
        familyFinding(
          "looks-like-newtons-per-metre",
          path,
          rate,
          "a rate in newtons per millimetre",
          `In newtons per millimetre this would be ${rate / 1000}.`,
        ),
      );
    } else if (rate < softest) {
      found.push(
        familyFinding(
          "looks-like-kilonewtons-per-millimetre",
          path,
          rate,
          "a rate in newtons per millimetre",
          `In newtons per millimetre this would be ${rate * 1000}.`,
        ),
      );
    }
  };
  for (const { path, raw } of jointsOf(axle)) {
    look(`${path}.radial_n_per_mm`, raw.radial_n_per_mm, SOFTEST_JOINT_N_PER_MM, STIFFEST_JOINT_N_PER_MM);
    look(`${path}.axial_n_per_mm`, raw.axial_n_per_mm, SOFTEST_JOINT_N_PER_MM, STIFFEST_JOINT_N_PER_MM);
    look(`${path}.voided_n_per_mm`, raw.voided_n_per_mm, SOFTEST_JOINT_N_PER_MM, STIFFEST_JOINT_N_PER_MM);
  }
  axle.links.forEach(({ raw }, index) => {
    look(
      `${axle.name}.links[${index}].member_n_per_mm`,
      raw.member_n_per_mm,
      SOFTEST_JOINT_N_PER_MM,
      STIFFEST_MEMBER_N_PER_MM,
    );
  });
  look(`${axle.name}.spring.rate_n_per_mm`, axle.spring.raw.rate_n_per_mm, 0, STIFFEST_SPRING_N_PER_MM);
  return found;
}
