import type { Metres } from "#quantity";
import type { Axle } from "../family.ts";
import type { Position } from "../position.ts";
import { type PositionDraft, placedPosition } from "./draft.ts";

/** Half spread of the final drive's mounts about the axle line. Drawing only; invented. */
const FINAL_DRIVE_SPREAD: Metres = 0.13;
/** Share of the inner tie-rod joint's y at which the rack mounts are drawn. Invented. */
const RACK_MOUNT_SHARE = 0.62;

/** Points that belong to the axle: bar bushes, rack mounts, steering play, subframe and final-drive mounts (P08, P28, P31, P37). */
export function axlePositions(axle: Axle): Position[] {
  return [...barBushes(axle), ...rackPositions(axle), ...subframeMounts(axle), ...finalDriveMounts(axle)];
}

/** Points P25 to P27, and the comparison of the two tyres of an axle. They lie nowhere on the drawing. */
export function axleResults(axle: Axle): Position[] {
  const nowhere = { at: null, sheet: "lower", joint: null } as const;
  const drafts: PositionDraft[] = [
    { item: "brakes", detail: "fluid", kind: "brake-fluid", label: "Brake fluid at the calipers", ...nowhere },
    ...(axle.brake.parking
      ? [{ item: "brakes", detail: "parking", kind: "parking-brake", label: "Parking brake", ...nowhere } as const]
      : []),
    { item: "brakes", detail: "result", kind: "brake-result", label: "Service brake result", ...nowhere },
    { item: "tyres", detail: "match", kind: "tyre", label: "Tyres, size and date left against right", ...nowhere },
  ];
  return drafts.map((draft) => placedPosition(draft, axle.name, null));
}

function barBushes(axle: Axle): Position[] {
  if (!axle.bar) return [];
  const draft: PositionDraft = {
    item: "bar",
    detail: "body-bush",
    kind: "bar-bush",
    label: "Anti-roll bar, bush on the body",
    at: axle.bar.bodyBush,
    sheet: "lower",
    joint: null,
  };
  return [placedPosition(draft, axle.name, "left"), placedPosition(draft, axle.name, "right")];
}

function rackPositions(axle: Axle): Position[] {
  const tieRod = axle.links.find((link) => link.steered);
  if (!tieRod) return [];
  const [x, y, z] = tieRod.inner.at;
  const mount: PositionDraft = {
    item: "rack",
    detail: "mount",
    kind: "rack-mount",
    label: "Rack mount and boot",
    at: [x, RACK_MOUNT_SHARE * y, z],
    sheet: "lower",
    joint: null,
  };
  const play: PositionDraft = {
    item: "steering",
    detail: "free-play",
    kind: "steering-play",
    label: "Steering free play",
    at: [x, 0, z],
    sheet: "lower",
    joint: null,
  };
  return [
    placedPosition(mount, axle.name, "left"),
    placedPosition(mount, axle.name, "right"),
    placedPosition(play, axle.name, null),
  ];
}

/** Mounts of one side are named from the front backward. */
function subframeMounts(axle: Axle): Position[] {
  const placed: Position[] = [];
  for (const side of ["left", "right"] as const) {
    const sign = side === "left" ? 1 : -1;
    const onSide = axle.subframeMounts.filter((mount) => sign * mount[1] > 0).sort((a, b) => b[0] - a[0]);
    onSide.forEach((mount, index) => {
      const word = mountWord(index, onSide.length);
      const left = [mount[0], sign * mount[1], mount[2]] as const;
      placed.push(
        placedPosition(
          {
            item: "subframe",
            detail: `${word}-mount`,
            kind: "subframe-mount",
            label: `Subframe, ${word.replace("-", " ")} mount`,
            at: left,
            sheet: "lower",
            joint: null,
          },
          axle.name,
          side,
        ),
      );
    });
  }
  return placed;
}

function mountWord(index: number, count: number): string {
  if (index === 0) return "front";
  if (index === count - 1) return "rear";
  return count === 3 ? "middle" : `middle-${index}`;
}

/** Only the rear axle's final drive hangs in mounts of its own; at the front it belongs to the engine and gearbox. */
function finalDriveMounts(axle: Axle): Position[] {
  if (!axle.driven || axle.name !== "rear") return [];
  const [x, , z] = axle.wheel.centre;
  const mounts = [
    { side: "left", word: "left front", at: [x + FINAL_DRIVE_SPREAD, FINAL_DRIVE_SPREAD, z] },
    { side: "right", word: "right front", at: [x + FINAL_DRIVE_SPREAD, -FINAL_DRIVE_SPREAD, z] },
    { side: null, word: "rear", at: [x - FINAL_DRIVE_SPREAD, 0, z] },
  ] as const;
  return mounts.map(({ word, at }) =>
    placedPosition(
      {
        item: "final-drive",
        detail: `${word.replace(" ", "-")}-mount`,
        kind: "differential-mount",
        label: `Final drive, ${word} mount`,
        at,
        sheet: "upper",
        joint: null,
      },
      axle.name,
      null,
    ),
  );
}
