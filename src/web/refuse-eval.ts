/**
 * The pages are served under a policy that forbids evaluating text as a program. The schema library tries whether it may,
 * and each try is reported; told beforehand it does not try. Imported first, before the library is loaded.
 */
Object.assign(globalThis, { __zod_globalConfig: { jitless: true } });
