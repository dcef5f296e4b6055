/** The script of the type checker that runs on this machine, below node_modules. */
export declare const typeChecker: () => string;
