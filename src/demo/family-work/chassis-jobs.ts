import type { JobRow } from "./job-rows.ts";

type AxleName = "front" | "rear";

/** A link, an arm or a bush of an invented car line: own hours, what it loosens and what it takes. */
export interface MemberRow {
  readonly id: string;
  readonly label: string;
  readonly verb?: "press";
  /** Items, or items with details, it cures; absent: every place of the item with its id. */
  readonly cures: readonly string[];
  readonly hours: number;
  readonly access?: readonly string[];
  readonly fasteners: readonly (readonly [item: string, count: number])[];
  readonly parts?: readonly (readonly [part: string, count: number])[];
  readonly alone?: true;
}

/** Jobs of links, arms and pressed bushes of one axle. */
export function memberJobs(axle: AxleName, rows: readonly MemberRow[]): JobRow[] {
  return rows.map((row) => ({
    id: row.id,
    axle,
    label: row.label,
    verb: row.verb ?? "renew",
    cures: row.cures,
    hours: row.hours,
    access: ["lift", "wheel-off", ...(row.access ?? [])],
    support: "Knuckle on a stand or strapped up: nothing hangs on hose, wire or joint",
    cautions: [1, 2, 12],
    loosens: [`${axle}-toe`],
    aligns: true,
    fasteners: row.fasteners,
    parts: row.parts ?? [[`${axle}-${row.id}`, 1]],
    ...(row.alone ? {} : { pair: true as const }),
  }));
}

/** Own hours of springs, dampers and their mounts on one side. */
export interface SpringHours {
  readonly damper: number;
  readonly topMount: number | null;
  readonly bumpStop: number;
  readonly spring: number;
  /** The spring comes out with the damper. */
  readonly coilOver: boolean;
  readonly strut: boolean;
}

export function springJobs(axle: AxleName, hours: SpringHours): JobRow[] {
  const out = ["lift", "wheel-off", `${axle}-damper-out`];
  const fasteners = [
    ["damper-bolt", 2],
    ["rod-nut", 1],
  ] as const;
  const at = { axle, access: out, fasteners, cautions: [1, 2, 5, 6, 12], pair: true } as const;
  const turned = hours.strut ? ({ loosens: ["front-toe"], aligns: true } as const) : {};
  const rows: JobRow[] = [
    {
      ...at,
      ...turned,
      id: "damper",
      label: hours.strut ? "Struts" : "Dampers",
      verb: "renew",
      cures: ["damper/leak", "damper/function", ...(hours.strut ? [] : ["damper/lower-bush"])],
      hours: hours.damper,
      parts: [[`${axle}-damper`, 1]],
    },
    {
      ...at,
      ...turned,
      id: "bump-stop",
      label: "Bump stops",
      verb: "renew",
      cures: ["bump-stop"],
      hours: hours.bumpStop,
      parts: [[`${axle}-bump-stop`, 1]],
    },
    {
      ...at,
      id: "spring",
      label: "Springs",
      verb: "renew",
      cures: ["spring"],
      hours: hours.spring,
      access: hours.coilOver ? out : ["lift", "wheel-off"],
      loosens: ["height"],
      aligns: true,
      parts: [[`${axle}-spring`, 1]],
    },
  ];
  if (hours.topMount !== null)
    rows.push({
      ...at,
      ...turned,
      id: "top-mount",
      label: "Top mounts",
      verb: "renew",
      cures: [hours.strut ? "strut/top-mount" : "damper/top-mount"],
      hours: hours.topMount,
      parts: [["top-mount", 1]],
    });
  return rows;
}

/** Own hours of what belongs to the whole axle. */
export interface AxleHours {
  readonly barLink: number;
  readonly barBush: number;
  /** null: no rack on this axle. */
  readonly rack: number | null;
  readonly subframe: number;
  /** null: no final drive in mounts of its own. */
  readonly finalDrive: number | null;
}

export function axleJobs(axle: AxleName, hours: AxleHours): JobRow[] {
  const toe = `${axle}-toe`;
  const tray = ["lift", "undertray"];
  const low = ["lift", "undertray", `${axle}-subframe-low`];
  const at = { axle, verb: "renew", scope: "axle", cautions: [1, 2, 12] } as const;
  const rows: JobRow[] = [
    {
      axle,
      id: "bar-link",
      label: "Anti-roll-bar links",
      verb: "renew",
      cures: ["bar-link"],
      hours: hours.barLink,
      access: ["lift", "wheel-off"],
      cautions: [1, 2, 12],
      fasteners: [["bar-link-nut", 2]],
      parts: [[`${axle}-bar-link`, 1]],
      pair: true,
    },
    {
      ...at,
      id: "bar-bushes",
      label: "Anti-roll-bar bushes",
      cures: ["bar/body-bush"],
      hours: hours.barBush,
      access: tray,
      parts: [[`${axle}-bar-bush`, 1]],
      pair: true,
    },
    {
      ...at,
      id: "subframe-mounts",
      label: "Subframe mounts",
      cures: ["subframe/front-mount", "subframe/rear-mount"],
      hours: hours.subframe,
      access: low,
      support: "Subframe on two stands, engine held from above at the front",
      loosens: ["subframe", toe],
      aligns: true,
      fasteners: [["subframe-bolt", 4]],
      parts: [[`${axle}-subframe-mount`, 2]],
      pair: true,
    },
  ];
  if (hours.rack !== null)
    rows.push(
      {
        ...at,
        id: "rack-mounts",
        label: "Rack mounts and boots",
        cures: ["rack/mount"],
        hours: hours.rack,
        access: tray,
        loosens: ["rack", "front-toe"],
        aligns: true,
        parts: [["rack-mount", 1]],
        pair: true,
      },
      {
        ...at,
        id: "steering-play",
        label: "Steering play: find the joint, set the rack",
        verb: "overhaul",
        cures: ["steering/free-play"],
        hours: 0.95,
        access: tray,
        cautions: [1, 2, 19],
        loosens: ["rack", "front-toe"],
        aligns: true,
        parts: [],
      },
    );
  if (hours.finalDrive !== null)
    rows.push(
      {
        ...at,
        id: "final-drive-mounts",
        label: "Final drive, front mounts",
        cures: ["final-drive/left-front-mount", "final-drive/right-front-mount"],
        hours: hours.finalDrive,
        access: low,
        support: "Final drive on a jack with a wide head",
        loosens: ["subframe", toe],
        aligns: true,
        parts: [["final-drive-mount", 2]],
      },
      {
        ...at,
        id: "final-drive-rear-mount",
        label: "Final drive, rear mount",
        cures: ["final-drive/rear-mount"],
        hours: 0.75,
        access: ["lift"],
        support: "Final drive on a jack with a wide head",
        parts: [["final-drive-rear-half", 1]],
      },
    );
  return rows;
}
