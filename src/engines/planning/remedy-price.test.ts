import { describe, expect, it } from "vitest";
import { splitCents } from "./cents.ts";
import { computeRemedyPrices, type PriceBook, type Remedy } from "./remedy-price.ts";

const operation = (id: string, hours: number, needs: string[] = [], disturbs: string[] = []) => ({
  id,
  hours,
  needs,
  disturbs,
});

const book: PriceBook = {
  labourRate: 8000,
  operations: [
    operation("lift", 0.1),
    operation("wheel", 0.15, ["lift"]),
    operation("arm-off", 0.9, ["wheel"], ["arm-bolts"]),
    operation("press-front", 0.4, ["arm-off"]),
    operation("press-rear", 0.2, ["arm-off"]),
    operation("pads", 0.5, ["wheel"]),
    operation("align", 0.8),
  ],
  hardware: [{ id: "arm-bolts", price: 950 }],
  kits: [],
  visitCost: 0,
  alignment: { operation: "align", ifParts: [], ifOperations: ["arm-off"] },
};
const frontBush: Remedy = { id: "front-bush", operations: ["press-front"], parts: [{ id: "fb", price: 3120 }] };
const rearBush: Remedy = { id: "rear-bush", operations: ["press-rear"], parts: [{ id: "rb", price: 4000 }] };
const pads: Remedy = { id: "pads", operations: ["pads"], parts: [{ id: "p", price: 5555 }] };

const pricesOf = (b: PriceBook, remedies: readonly Remedy[]) => {
  const prices = computeRemedyPrices(b, remedies);
  return { total: prices.total, by: Object.fromEntries(prices.remedies.map((r) => [r.id, r])) };
};

describe("price of a remedy, by hand", () => {
  it("three remedies: own work, and the shared in proportion to own labour", () => {
    const { by, total } = pricesOf(book, [frontBush, rearBush, pads]);
    // Own labour: 0.4 h 32.00, 0.2 h 16.00, 0.5 h 40.00.
    expect([by["front-bush"]?.ownLabour, by["rear-bush"]?.ownLabour, by.pads?.ownLabour]).toEqual([3200, 1600, 4000]);
    // Lift 8.00 among 32:16:40 of 88: 290.9, 145.45, 363.6 -> 291, 145, 364; wheel 12.00: 436.36, 218.18, 545.45 -> 436, 218, 546.
    // Arm 72.00, bolts 9.50 and alignment 64.00 between the two bushes, 2:1: 4800/2400, 633.3/316.7, 4266.7/2133.3.
    const share = (id: string, of: string) => by[id]?.shares.find((s) => s.id === of)?.share;
    expect(["front-bush", "rear-bush", "pads"].map((id) => share(id, "lift"))).toEqual([291, 145, 364]);
    expect(["front-bush", "rear-bush", "pads"].map((id) => share(id, "wheel"))).toEqual([436, 218, 546]);
    expect(["front-bush", "rear-bush"].map((id) => share(id, "arm-off"))).toEqual([4800, 2400]);
    expect(["front-bush", "rear-bush"].map((id) => share(id, "arm-bolts"))).toEqual([633, 317]);
    expect(["front-bush", "rear-bush"].map((id) => share(id, "align"))).toEqual([4267, 2133]);
    expect(by["front-bush"]?.total).toBe(3120 + 3200 + 291 + 436 + 4800 + 633 + 4267);
    expect(by["rear-bush"]?.total).toBe(4000 + 1600 + 145 + 218 + 2400 + 317 + 2133);
    expect(by.pads?.total).toBe(5555 + 4000 + 364 + 546);
    // The visit by hand: hours 0.1+0.15+0.9+0.4+0.2+0.5+0.8 = 3.05 at 80 = 244.00; bolts 9.50; parts 126.75.
    expect(total).toBe(24400 + 950 + 12675);
  });

  it("declining one bush makes the arm, the bolts and the alignment the other's own", () => {
    const { by, total } = pricesOf(book, [frontBush, pads]);
    expect(by["front-bush"]).toMatchObject({ ownLabour: 3200 + 7200 + 6400, hardware: 950, parts: 3120 });
    // Lift 8.00 and wheel 12.00 among 168:40.
    expect(by["front-bush"]?.shares.map((s) => [s.id, s.share])).toEqual([
      ["lift", 646],
      ["wheel", 969],
    ]);
    expect(by.pads?.shares.map((s) => [s.id, s.share])).toEqual([
      ["lift", 154],
      ["wheel", 231],
    ]);
    expect(total).toBe((10 + 15 + 90 + 40 + 50 + 80) * 80 + 950 + 3120 + 5555);
  });

  it("a remedy alone carries everything", () => {
    const { by, total } = pricesOf({ ...book, visitCost: 1250 }, [pads]);
    expect(by.pads).toMatchObject({ ownLabour: 800 + 1200 + 4000, total: 6000 + 5555 + 1250 });
    expect(total).toBe(by.pads?.total);
  });

  it("a kit is shared by what its parts would cost singly, and its parts are not charged again", () => {
    const kit = { id: "bushes", contents: ["fb", "rb"], price: 6000 };
    const { by } = pricesOf({ ...book, kits: [kit] }, [frontBush, rearBush]);
    // 60.00 in 31.20 : 40.00 = 2629.2 : 3370.8.
    expect([by["front-bush"], by["rear-bush"]].map((r) => r?.shares.find((s) => s.kind === "kit")?.share)).toEqual([
      2629, 3371,
    ]);
    expect(by["front-bush"]?.parts).toBe(0);
  });

  it("where nobody has own labour the shared is split equally, the odd cent to the first", () => {
    const one: Remedy = { id: "one", operations: ["arm-off"], parts: [] };
    const { by } = pricesOf({ ...book, alignment: null, labourRate: 8010 }, [one, { ...one, id: "two" }]);
    expect(by.one?.shares.map((s) => s.share)).toEqual([401, 601, 3605, 475]);
    expect(by.two?.shares.map((s) => s.share)).toEqual([400, 601, 3604, 475]);
  });

  it("no remedies cost nothing; an operation that is not listed is refused", () => {
    expect(computeRemedyPrices(book, [])).toEqual({ remedies: [], total: 0 });
    expect(() => computeRemedyPrices(book, [{ id: "x", operations: ["weld"], parts: [] }])).toThrow("weld");
  });
});

describe("splitting cents", () => {
  it.each([
    [100, [1, 1, 1], [34, 33, 33]],
    [100, [2, 1], [67, 33]],
    [1, [1, 3], [0, 1]],
    [0, [1, 3], [0, 0]],
    [-100, [1, 1, 1], [-34, -33, -33]],
    [5, [0, 0], [3, 2]],
    [7, [], []],
  ])("%d by %j", (whole, weights, shares) => {
    expect(splitCents(whole, weights)).toEqual(shares);
  });
});
