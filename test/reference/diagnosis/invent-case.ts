import type { Observation, SuspectModel } from "#engines/diagnosis";
import { seededRandom } from "#numeric";

/** An invented complaint with up to `most` causes; strengths of 0 and 1, leaks of 0 and signs of one cause turn up. */
export function inventCase(seed: number, most: number): { readonly model: SuspectModel; readonly seen: Observation } {
  const random = seededRandom(seed);
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const causes = Array.from({ length: whole(1, most) }, (_, i) => ({ id: `cause ${i}`, prior: random() ** 3 }));
  const signs = Array.from({ length: whole(2, 9) }, (_, s) => {
    const dense = random() < 0.7 ? 0.6 : 0.1;
    const strengths = causes.flatMap(({ id }): [string, number][] => {
      if (random() > dense) return [];
      const r = random();
      return [[id, r < 0.05 ? 1 : r < 0.1 ? 0 : random()]];
    });
    return {
      id: `sign ${s}`,
      leak: random() < 0.2 && s > 0 ? 0 : random() * 0.2 + 1e-4,
      strengths: new Map(strengths),
    };
  });
  const names = signs.map((s) => s.id);
  const complaint = names.slice(0, random() < 0.25 ? 2 : 1);
  const rest = names.slice(complaint.length).map((name) => ({ name, r: random() }));
  return {
    model: { causes, signs },
    seen: {
      complaint,
      present: rest.filter(({ r }) => r < 0.35).map(({ name }) => name),
      absent: rest.filter(({ r }) => r > 0.6).map(({ name }) => name),
    },
  };
}
