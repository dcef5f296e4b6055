import { parseFamily } from "#contract";
import type { Family } from "#vehicle";
import { demoSheetText, editSheet } from "./edit-sheet.ts";
import { oneKnuckleAsBodies } from "./one-knuckle-as-bodies.ts";

function read(sheet: unknown): Family {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings, null, 1));
  return parsed.family;
}

/** One car line twice: its rear axle as the built-in layout, and the same axle written as bodies and joints. */
export function rearAxleInTwoForms(): { readonly own: Family; readonly bodies: Family } {
  // Its spring and damper stand on a link, which as bodies would be one more: here both stand on the knuckle.
  const onKnuckle = { on: "knuckle", moving_mm: [-2640, 600, 230] };
  const sheet = editSheet(JSON.parse(demoSheetText("siskin-coupe")), [
    { set: "rear.spring.seat", to: onKnuckle },
    { set: "rear.links[3].inner_joint.conical_nm_per_deg", to: 9 },
    { set: "rear.links[3].inner_joint.torsional_nm_per_deg", to: 2 },
    { set: "rear.damper.seat", to: { ...onKnuckle, moving_mm: [-2670, 660, 240] } },
  ]);
  return { own: read(sheet), bodies: read(oneKnuckleAsBodies(sheet as Parameters<typeof oneKnuckleAsBodies>[0])) };
}
