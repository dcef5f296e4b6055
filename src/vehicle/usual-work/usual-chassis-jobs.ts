import type { Axle, Link } from "../family.ts";
import { TRAILING_ARM } from "../positions/joint-positions.ts";
import { sentenceCase } from "../positions/joint-words.ts";
import { hoursOf } from "./usual-hours.ts";
import type { UsualFastener, UsualJob } from "./usual-job.ts";

const bushBolt: UsualFastener = {
  item: "link-bolt",
  label: "Bolt and nut through a rubber bush",
  count: 1,
  policy: "if-seized",
  atRideHeight: true,
};
const jointNut: UsualFastener = {
  item: "joint-nut",
  label: "Self-locking nut of a ball joint",
  count: 1,
  policy: "always-new",
  atRideHeight: false,
};
const damperBolts: UsualFastener = {
  item: "damper-bolt",
  label: "Damper bolts and nuts",
  count: 2,
  policy: "if-seized",
  atRideHeight: true,
};
const topNut: UsualFastener = {
  item: "top-nut",
  label: "Self-locking nut of the piston rod",
  count: 1,
  policy: "always-new",
  atRideHeight: false,
};

const toe = (axle: Axle): UsualJob["loosens"] => [axle.name === "front" ? "front-toe" : "rear-toe"];
const corner = (axle: Axle): Omit<UsualJob, "id" | "label" | "cures" | "hours" | "parts"> => ({
  verb: "renew",
  scope: "corner",
  phase: "chassis",
  access: ["lift", "wheel-off"],
  support: "Hold the knuckle so that nothing hangs on the hose, the wire or a joint",
  cautions: [1, 2, 12],
  loosens: toe(axle),
  fasteners: [],
  pair: true,
  needsAlignment: true,
});

/** Links, arms and the trailing arm of one axle, each renewed as a whole; a tie rod by its two ends. */
export function memberJobs(axle: Axle): UsualJob[] {
  const jobs: UsualJob[] = [];
  const armsDone = new Set<string>();
  for (const link of axle.links) {
    if (link.steered) jobs.push(...tieRodJobs(axle, link));
    else if (link.arm === undefined) jobs.push(memberJob(axle, link.name, link.label, [link]));
    else if (!armsDone.has(link.arm)) {
      armsDone.add(link.arm);
      const legs = axle.links.filter((other) => other.arm === link.arm);
      jobs.push(memberJob(axle, link.arm, sentenceCase(link.arm), legs));
    }
  }
  if (axle.trailingArm)
    jobs.push({
      ...corner(axle),
      id: "trailing-arm-bush",
      label: "Trailing arm bush",
      cures: [TRAILING_ARM],
      verb: "press",
      hours: hoursOf(axle).trailingBush,
      fasteners: [{ ...bushBolt, count: 3 }],
      parts: [{ id: "trailing-arm-bush", label: "Trailing arm bush", count: 1 }],
    });
  return jobs;
}

function memberJob(axle: Axle, item: string, label: string, links: readonly Link[]): UsualJob {
  const hours = hoursOf(axle);
  const upper = links.every((link) => link.inner.at[2] > axle.wheel.centre[2]);
  const hasBall = links.some(({ outerJoint }) => outerJoint.kind === "ball-joint");
  return {
    ...corner(axle),
    id: item,
    label,
    cures: [item],
    hours: upper ? hours.upperLink : links.length > 1 ? hours.arm : hours.link,
    access: [
      "lift",
      "wheel-off",
      ...(upper && axle.name === "front" ? ["front-damper-out"] : []),
      ...(axle.name === "front" && !upper ? ["undertray"] : []),
    ],
    fasteners: [{ ...bushBolt, count: links.length + (hasBall ? 0 : 1) }, ...(hasBall ? [jointNut] : [])],
    parts: [{ id: item, label, count: 1 }],
  };
}

function tieRodJobs(axle: Axle, link: Link): UsualJob[] {
  const both = { ...corner(axle), fasteners: [jointNut], pair: false };
  return [
    {
      ...both,
      id: `${link.name}-inner-joint`,
      label: `${link.label}, inner joint`,
      cures: [`${link.name}/inner-joint`, `${link.name}/inner-bush`],
      hours: 0.65,
      parts: [{ id: `${link.name}-inner-joint`, label: `${link.label}, inner joint with boot`, count: 1 }],
    },
    {
      ...both,
      id: `${link.name}-end`,
      label: `${link.label}, outer end`,
      cures: [`${link.name}/outer-joint`, `${link.name}/outer-bush`],
      hours: 0.35,
      parts: [{ id: `${link.name}-end`, label: `${link.label}, outer end`, count: 1 }],
    },
  ];
}

/** Damper, its mounts, spring and bump stop; the spring of a strut and of a front damper comes out with it. */
export function springJobs(axle: Axle): UsualJob[] {
  const hours = hoursOf(axle);
  const out = `${axle.name}-damper-out`;
  const withDamper: readonly string[] = ["lift", "wheel-off", out];
  const overDamper = axle.strut !== undefined || axle.name === "front";
  const name = axle.strut ? "Strut insert" : "Damper";
  const base = {
    ...corner(axle),
    access: withDamper,
    fasteners: [damperBolts, topNut],
    needsAlignment: axle.strut !== undefined,
    loosens: axle.strut ? toe(axle) : [],
    cautions: [1, 2, 5, 6, 12],
  };
  return [
    {
      ...base,
      id: "damper",
      label: name,
      cures: ["damper/leak", "damper/function", "damper/lower-bush"],
      hours: hours.damper,
      parts: [{ id: "damper", label: name, count: 1 }],
    },
    {
      ...base,
      id: "top-mount",
      label: "Top mount",
      cures: ["strut/top-mount", "damper/top-mount"],
      hours: hours.topMount,
      parts: [{ id: "top-mount", label: "Top mount", count: 1 }],
    },
    {
      ...base,
      id: "bump-stop",
      label: "Bump stop",
      cures: ["bump-stop"],
      hours: 0.2,
      parts: [{ id: "bump-stop", label: "Bump stop and dust sleeve", count: 1 }],
    },
    {
      ...base,
      id: "spring",
      label: "Spring",
      cures: ["spring"],
      hours: hours.spring,
      access: overDamper ? withDamper : ["lift", "wheel-off"],
      loosens: ["height"],
      needsAlignment: true,
      parts: [{ id: "spring", label: "Spring", count: 1 }],
    },
  ];
}

/** What belongs to the axle: anti-roll bar, rack, subframe, final drive. */
export function axleJobs(axle: Axle): UsualJob[] {
  const whole = { ...corner(axle), scope: "axle" as const, support: "Subframe on two stands", needsAlignment: false };
  const bush = { id: "bar-bush", label: "Anti-roll-bar bush", count: 1 };
  return [
    {
      ...corner(axle),
      id: "bar-link",
      label: "Anti-roll-bar link",
      cures: ["bar-link"],
      hours: 0.25,
      loosens: [],
      needsAlignment: false,
      fasteners: [{ ...jointNut, count: 2 }],
      parts: [{ id: "bar-link", label: "Anti-roll-bar link", count: 1 }],
    },
    {
      ...whole,
      id: "bar-bushes",
      label: "Anti-roll-bar bushes",
      cures: ["bar/body-bush"],
      hours: 0.6,
      access: ["lift", "undertray"],
      loosens: [],
      parts: [bush],
    },
    {
      ...whole,
      id: "rack-mounts",
      label: "Rack mounts and boots",
      cures: ["rack/mount"],
      hours: 0.8,
      access: ["lift", "undertray"],
      loosens: ["rack", "front-toe"],
      needsAlignment: true,
      parts: [{ id: "rack-mount", label: "Rack mount with boot", count: 1 }],
    },
    {
      ...whole,
      id: "steering-play",
      label: "Steering play: find the joint, set the rack",
      cures: ["steering/free-play"],
      verb: "overhaul",
      hours: 0.9,
      access: ["lift", "undertray"],
      cautions: [1, 2, 19],
      loosens: ["rack", "front-toe"],
      needsAlignment: true,
      parts: [],
    },
    {
      ...whole,
      id: "subframe-mounts",
      label: "Subframe mounts",
      cures: ["subframe-mount"],
      hours: 1.6,
      access: ["lift", "undertray", "subframe-lowered"],
      loosens: ["subframe", ...toe(axle)],
      needsAlignment: true,
      fasteners: [
        { item: "subframe-bolt", label: "Subframe bolt", count: 4, policy: "always-new", atRideHeight: false },
      ],
      parts: [{ id: "subframe-mount", label: "Subframe mount", count: 2 }],
    },
    {
      ...whole,
      id: "final-drive-mounts",
      label: "Final drive, front mounts",
      cures: ["final-drive/left-front-mount", "final-drive/right-front-mount"],
      hours: 1.3,
      access: ["lift", "subframe-lowered"],
      loosens: ["subframe", ...toe(axle)],
      needsAlignment: true,
      parts: [{ id: "final-drive-mount", label: "Final drive mount", count: 1 }],
    },
    {
      ...whole,
      id: "final-drive-rear-mount",
      label: "Final drive, rear mount",
      cures: ["final-drive/rear-mount"],
      hours: 0.7,
      access: ["lift"],
      support: "Jack under the final drive",
      loosens: [],
      parts: [{ id: "final-drive-rear-half", label: "Final drive rear mount, rubber half", count: 1 }],
    },
  ];
}
