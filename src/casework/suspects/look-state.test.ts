import { describe, expect, it } from "vitest";
import type { SignName } from "../cases/look.ts";
import type { PlaceFinding, Reason } from "../cases/place-finding.ts";
import { seenReason } from "../cases/reading-reasons.ts";
import { causes } from "./cause-table.ts";
import { lookState, placesOfCause } from "./look-state.ts";

const seen = (text: string, grade: Reason["grade"], about: Reason["about"] = null): Reason =>
  seenReason(about, text, grade);

/** A place at the front left where an eye saw these signs, or nothing. */
const place = (
  item: string,
  kind: PlaceFinding["kind"],
  signs: readonly SignName[],
  reasons: readonly Reason[],
): PlaceFinding => ({
  place: `front-left/${item}`,
  label: item,
  axle: "front",
  side: "left",
  kind,
  grade: reasons[0]?.grade ?? 0,
  closeToCall: false,
  notKnown: false,
  found: signs.join(", "),
  reasons,
  limitWords: null,
  howSure: "",
  caveat: null,
  looks: {
    place: `front-left/${item}`,
    readings: [],
    signs,
    seen: true,
    notTaken: false,
    looks: [
      {
        id: "1",
        car: "car",
        visit: "visit",
        place: `front-left/${item}`,
        content: signs.length === 0 ? { kind: "nothing-seen" } : { kind: "signs", signs },
        loadState: null,
        instrument: null,
        photo: null,
        note: null,
        who: "",
        at: "2026-03-12T09:00:00Z",
        sequence: 1,
        receivedAt: "2026-03-12T09:00:00Z",
        clockOff: false,
      },
    ],
  },
});

const stateOf = (id: string, findings: readonly PlaceFinding[]): string => {
  const cause = causes.find((c) => c.id === id);
  if (cause === undefined) throw new Error(id);
  return lookState(cause, placesOfCause(cause, findings));
};

describe("what was found at one place", () => {
  it("of a disc speaks for its own cause alone: a varying thickness is no run-out, no deposit and no crack", () => {
    const findings = [
      place("disc/variation", "disc", [], [seen("0.040 mm", 2, "thickness-variation")]),
      place("disc/runout", "disc", [], []),
    ];
    expect(stateOf("disc-thickness-variation", findings)).toBe("there");
    expect(stateOf("disc-lateral-runout", findings)).toBe("not there");
    for (const id of ["uneven-pad-deposits-on-disc", "disc-hot-spots-or-cracks", "disc-worn-ridged-or-rusty"])
      expect(stateOf(id, findings), id).toBe("open");
  });

  it("of a disc's surface tells deposits from cracks", () => {
    const surface = [place("disc/surface", "disc", ["deposits"], [seen("deposits", 2)])];
    expect(stateOf("uneven-pad-deposits-on-disc", surface)).toBe("there");
    expect(stateOf("disc-hot-spots-or-cracks", surface)).toBe("not there");
    expect(stateOf("disc-thickness-variation", surface)).toBe("open");
  });

  it("of a bulging tyre is its carcass, and neither conicity nor balance nor run-out", () => {
    const tyre = [
      place("tyre/condition", "tyre", ["bulge"], [seen("bulge", 4)]),
      place("wheel/runout", "wheel", [], []),
    ];
    expect(stateOf("tyre-flat-spot-or-belt-damage", tyre)).toBe("there");
    for (const id of ["tyre-side-force-conicity", "wheel-out-of-balance", "wheel-runout"])
      expect(stateOf(id, tyre), id).toBe("open");
  });

  it("of a bearing tells play from roughness, by hand or by a reading", () => {
    const rough = [place("wheel-bearing", "bearing", ["rough"], [seen("rough", 3)])];
    expect(stateOf("wheel-bearing-rough", rough)).toBe("there");
    expect(stateOf("wheel-bearing-play", rough)).toBe("not there");
    const read = [place("wheel-bearing", "bearing", [], [seen("play 0.3 mm", 3, "play")])];
    expect(stateOf("wheel-bearing-play", read)).toBe("there");
    expect(stateOf("wheel-bearing-rough", read)).toBe("not there");
  });

  it("of a five-link front axle's lower joints and bushes counts for the lower arm", () => {
    const joint = [place("spring-link/outer-joint", "ball-joint", ["play-felt"], [seen("play", 3)])];
    expect(stateOf("lower-ball-joint", joint)).toBe("there");
    expect(
      stateOf("front-lower-bush", [place("spring-link/inner-bush", "bush", ["web-torn"], [seen("torn", 3)])]),
    ).toBe("there");
  });
});
