import { z } from "zod";

const id = z.string().min(1).max(120);
const ids = z.array(id).max(600);
const amount = z.number().min(0);

const life = z.discriminatedUnion("family", [
  z.strictObject({ family: z.literal("weibull"), shape: z.number().positive(), scale: z.number().positive() }),
  z.strictObject({ family: z.literal("lognormal"), median: z.number().positive(), sigma: z.number().positive() }),
]);

const visit = z.strictObject({
  t: z.int().min(1).optional(),
  miles: amount,
  discount: amount,
  fixed_cost: amount,
  bay_hours: amount.nullish(),
  budget: amount.nullish(),
});

const access = z.array(z.array(id).min(1).max(60)).max(60);

const part = z.strictObject({
  id,
  price: amount,
  access,
  age_now: amount,
  life: life.nullish(),
  fail_cost: amount.nullish(),
  p_max: z.number().min(0).max(1).nullish(),
  max_age: amount.nullish(),
  must_now: z.boolean().nullish(),
  end_value_share: z.number().min(0).max(1).nullish(),
  condition_ok: z.boolean().nullish(),
});

const upgrade = z.strictObject({
  id,
  price: amount,
  access,
  requires: ids,
  required_by: z.int().min(1).nullish(),
  benefit_per_1000: z.number(),
});

/** Bounds on the size of an instance (invented): beyond them no search would end. */
export const planInput = z.strictObject({
  name: z.string().optional(),
  seed: z.number().optional(),
  kind: z.string().optional(),
  currency: z.string().optional(),
  expected: z.unknown().optional(),
  labour_rate: amount,
  horizon_miles: amount,
  end_discount: amount,
  visits: z.array(visit).min(1).max(24),
  parts: z.array(part).max(300),
  pairs: z.array(z.array(id).min(1).max(60)).max(300).nullish(),
  operations: z.array(z.strictObject({ id, hours: amount, needs: ids.nullish(), disturbs: ids.nullish() })).max(600),
  hardware: z
    .array(z.strictObject({ id, price: amount }))
    .max(1000)
    .nullish(),
  kits: z
    .array(z.strictObject({ id, contents: ids, price: amount }))
    .max(200)
    .nullish(),
  upgrades: z.array(upgrade).max(100).nullish(),
  alignment: z.strictObject({ op: id, if_parts: ids, if_ops: ids }).nullish(),
  time_limit_s: z
    .number()
    .positive()
    .max(3600)
    .default(600)
    .describe("longest search; after it the best plan so far is given with the bound that is proved"),
});

export type WirePlan = z.output<typeof planInput>;

const choice = z.strictObject({
  visit: z.int(),
  replace: z.array(z.string()),
  operations: z.array(z.string()),
  kits: z.array(z.string()),
  hours: z.number(),
  spend: z.number(),
});

const blocked = z.strictObject({
  by: z
    .enum(["bay_hours", "budget", "part", "rules"])
    .describe("a limit of a visit; a part whose own limits no sequence of units keeps; pairs and upgrades"),
  visit: z.int().nullable(),
  part: z.string().nullable(),
  limit: z.number().nullable(),
  least: z.number().nullable().describe("what this limit would have to be, every other as it is; null: not told"),
});

export const planOutput = z.strictObject({
  status: z.enum(["optimal", "infeasible", "limit"]).describe("optimal: proved; limit: the time ran out"),
  cost: z.number().nullable(),
  bound: z.number().nullable().describe("no plan costs less"),
  choices: z.array(choice).describe("visits at which something is done"),
  blocked_by: z.array(blocked).optional().describe("why there is no plan: these together, none of them to spare"),
});
