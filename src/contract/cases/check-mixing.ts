import type { Finding } from "#numeric";

const words = (invented: boolean): string => (invented ? "invented" : "real");

/**
 * Real and invented cars never stand in one workshop.
 * @param invented what a car or the settings say that are to be kept
 * @param standing what the workshop on record is; null where nothing is on record yet
 */
export const checkMixing = (invented: boolean, standing: boolean | null, path: string): readonly Finding[] =>
  standing === null || standing === invented
    ? []
    : [
        {
          code: "mixed-workshop",
          path,
          got: `${words(invented)}: nothing of it was kept`,
          needed: `${words(standing)}, as everything in this workshop is`,
          hint: standing
            ? "Your own cars begin in a data folder of their own: start with --empty."
            : "The invented workshop has a data folder of its own.",
        },
      ];
