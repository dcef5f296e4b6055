import { describe, expect, it } from "vitest";
import { askDoor } from "#contract";
import {
  chooseHolds,
  computeLoadState,
  judgePlay,
  type LoadState,
  type PlaySeen,
  type Support,
} from "#engines/linkage";
import { norm } from "#numeric";
import {
  type AxleName,
  assembleCorner,
  type CornerAssembly,
  familyFromSilhouette,
  type LayoutName,
  STANDARD_GRAVITY,
} from "#vehicle";
import { modelOfAssembly } from "../../src/casework/fault/corner-model.ts";

/** What the trade says of each layout (docs/method/load-states.md, section 4), held against the templates' own masses. */
function cornerOf(axle: AxleName, layout: LayoutName): CornerAssembly {
  const made = familyFromSilhouette(axle === "front" ? { frontLayout: layout } : { rearLayout: layout });
  if (!("family" in made)) throw new Error("no family");
  return assembleCorner(made.family, `${axle}-left`);
}

/** The part the spring stands on: the first link of it, or null on the knuckle. */
function springPart(a: CornerAssembly): string | null {
  const { seat } = a.spring;
  if (seat.on === "knuckle") return null;
  return a.links[seat.on === "link" ? seat.link : seat.links[0]]?.name ?? null;
}

function hold(a: CornerAssembly, support: Support): LoadState {
  const found = computeLoadState(
    {
      geometry: modelOfAssembly(a).geometry,
      springRate: a.spring.rate,
      wheelLoad: a.wheelLoad,
      unsprungMass: a.unsprungMass,
      droop: a.droopStop,
      gravity: STANDARD_GRAVITY,
    },
    support,
  );
  if (!("state" in found)) throw new Error(JSON.stringify(found));
  return found.state;
}

const under = (part: string): Support => ({ kind: "under", part, share: 0.85, raised: 0.025 });
const loadOf = (state: LoadState, link: string): number =>
  norm(state.joints.find((j) => j.link === link && j.end === "outer")?.force ?? [Number.NaN, 0, 0]);
const means = { rock: 150, bar: 500 };
const seen = (state: LoadState): readonly PlaySeen[] => judgePlay(state, [1, 0, 0], means);
const by = (state: LoadState, link: string) => seen(state).find((j) => j.link === link && j.end === "outer")?.by;

describe("a strut with one lower arm", () => {
  const a = cornerOf("front", "strut");
  const ride = hold(a, { kind: "ride" });
  const hanging = hold(a, { kind: "hanging" });
  const [lower] = a.links;
  if (!lower) throw new Error("no arm");

  it("carries the car through the strut: the lower joint takes hardly any of it upright, but the strut's side force", () => {
    const force = ride.joints.find((j) => j.link === lower.name && j.end === "outer")?.force ?? [0, 0, 0];
    expect(Math.abs(force[2])).toBeLessThan(0.03 * a.wheelLoad);
    expect(norm(force)).toBeGreaterThan(0.1 * a.wheelLoad);
    expect(ride.spring).toBeGreaterThan(0.85 * a.wheelLoad);
  });

  it("shows play of its lower joint and tie rod with the wheel hanging", () => {
    expect(by(hanging, lower.name)).toBe("hand");
    expect(by(hanging, "tie-rod")).toBe("hand");
    expect(by(ride, lower.name)).not.toBe("hand");
  });

  it("hides it where the arm is supported: there the arm carries the spring", () => {
    expect(loadOf(hold(a, under(lower.name)), lower.name)).toBeGreaterThan(10 * loadOf(hanging, lower.name));
  });
});

describe.each([
  ["front", "double-wishbone", "upper-arm-front"],
  ["front", "five-link", "upper-front-link"],
  ["rear", "five-link", "upper-front-link"],
  ["rear", "trailing-arm", "upper-link"],
] as const)("a %s %s", (axle, layout, upper) => {
  const a = cornerOf(axle, layout);
  const part = springPart(a);
  if (part === null) throw new Error("the spring stands on the knuckle");
  const ride = hold(a, { kind: "ride" });
  const supported = hold(a, under(part));
  const hanging = hold(a, { kind: "hanging" });

  it("carries the car through the outer joint of the part the spring stands on", () => {
    const loads = ride.joints.filter((j) => j.end === "outer").map((j) => norm(j.force));
    expect(loadOf(ride, part)).toBe(Math.max(...loads));
    expect(loadOf(ride, part)).toBeGreaterThan(0.6 * a.wheelLoad);
    expect(loadOf(ride, upper)).toBeLessThan(0.6 * loadOf(ride, part));
  });

  it("takes the load off that joint when that part is supported outboard, and shows its play by hand", () => {
    expect(loadOf(supported, part)).toBeLessThan(0.2 * loadOf(ride, part));
    expect(by(supported, part)).toBe("hand");
    expect(by(ride, part)).toBe("nothing");
  });

  it("shows play of the follower joints in the same state", () => {
    for (const { link, end, by: shown } of seen(supported))
      if (end === "outer" && link !== part) expect(shown, link).toBe("hand");
  });

  it("loads it when another part is supported instead", () => {
    expect(loadOf(hold(a, under(upper)), part)).toBeGreaterThan(2 * loadOf(supported, part));
  });

  it("with the wheel just hanging hides it exactly where the damper with its stop stands on the knuckle", () => {
    // The trade's rule to support the arm is needed there; where spring and stop stand on one part they hold each other.
    const onKnuckle = a.damper.seat.on === "knuckle";
    expect(by(hanging, part) === "hand").toBe(!onKnuckle);
    expect(loadOf(hanging, part) > 1.5 * loadOf(supported, part)).toBe(onKnuckle);
  });

  it("has one best way for every outer joint, none of them standing", () => {
    const holds = chooseHolds([seen(hanging), seen(supported), seen(ride)]);
    for (const { end, state } of holds) if (end === "outer") expect([0, 1]).toContain(state);
  });
});

describe("the rear toe link", () => {
  it("is judged by steering the wheel by hand, front and rear edge", () => {
    const a = cornerOf("rear", "five-link");
    const part = springPart(a) ?? "";
    const toe = seen(hold(a, under(part))).find((j) => j.link === "toe-link" && j.end === "outer");
    expect([toe?.rock, toe?.by]).toEqual(["3-9", "hand"]);
  });
});

describe("the calculation of load states", () => {
  const a = cornerOf("rear", "five-link");
  const mm = (p: readonly number[]): number[] => p.map((x) => 1000 * x);
  const part = springPart(a) ?? "";
  const question = {
    links: a.links.map((l) => ({ name: l.name, inner_mm: mm(l.inner.at), outer_mm: mm(l.outer.at) })),
    wheel: {
      centre_mm: mm(a.wheel.centre),
      camber_deg: -1,
      toe_deg: 0.1,
      loaded_radius_mm: 1000 * a.wheel.loadedRadius,
    },
    spring: {
      body_mm: mm(a.spring.body),
      on: part,
      moving_mm: mm(a.spring.seatAt),
      rate_n_per_mm: a.spring.rate / 1000,
    },
    damper: { body_mm: mm(a.damper.body), on: "knuckle", moving_mm: mm(a.damper.seatAt) },
    rubber: a.links.map((l) => ({ link: l.name, end: "inner", radial_n_per_mm: 4000 })),
    wheel_load_n: a.wheelLoad,
    unsprung_kg: a.unsprungMass,
    droop_stop_mm: 1000 * a.droopStop,
    under: [{ link: part }],
  };
  interface Movement {
    readonly sound_mm: number;
    readonly faulty_mm: number;
    readonly free_mm: number;
    readonly hand_can_tell: boolean;
  }
  interface WireState {
    readonly held: string;
    readonly rock_12_6: Movement | null;
    readonly joints: readonly { readonly force_n: readonly number[]; readonly load_n: number }[];
  }
  const ask = (extra: object) => {
    const answer = askDoor("linkage.load-states", { ...question, ...extra });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    return answer.output as {
      readonly states: readonly WireState[];
      readonly best: readonly { state: number | null }[];
    };
  };

  it("tells a millimetre of play by hand, and not a bush a little softer", () => {
    const loose = ask({ faults: [{ kind: "play", link: "upper-front-link", total_mm: 1 }] }).states[2]?.rock_12_6;
    expect(loose?.free_mm).toBeGreaterThan(0.5);
    expect(loose?.hand_can_tell).toBe(true);
    const soft = ask({ faults: [{ kind: "soft", link: "upper-front-link", end: "inner", factor: 0.8 }] }).states[2];
    expect(soft?.rock_12_6?.faulty_mm).toBeGreaterThan(soft?.rock_12_6?.sound_mm ?? Number.NaN);
    expect(soft?.rock_12_6?.hand_can_tell).toBe(false);
  });

  it("gives the mirrored forces on the right", () => {
    const flip = (p: readonly number[]): number[] => [p[0] as number, -(p[1] as number), p[2] as number];
    const seat = (s: { body_mm: number[]; moving_mm: number[] }) => ({
      ...s,
      body_mm: flip(s.body_mm),
      moving_mm: flip(s.moving_mm),
    });
    const right = ask({
      side: "right",
      links: question.links.map((l) => ({ ...l, inner_mm: flip(l.inner_mm), outer_mm: flip(l.outer_mm) })),
      wheel: { ...question.wheel, centre_mm: flip(question.wheel.centre_mm) },
      spring: seat(question.spring),
      damper: seat(question.damper),
    });
    ask({}).states.forEach((state, i) => {
      state.joints.forEach((joint, j) => {
        const twin = right.states[i]?.joints[j]?.force_n ?? [];
        expect(
          norm([0, 1, 2].map((c) => (flip(joint.force_n)[c] as number) - (twin[c] ?? Number.NaN)) as never),
        ).toBeLessThan(1e-8);
      });
    });
  });

  it("is refused where a support stands under nothing", () => {
    const answer = askDoor("linkage.load-states", { ...question, under: [{ link: "sprin-link" }] });
    expect("findings" in answer && answer.findings[0]).toMatchObject({ code: "unknown-name", path: "under[0].link" });
  });
});
