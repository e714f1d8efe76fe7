import { toRules } from "./tests/architecture/walls.mjs";

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: toRules(),
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: { path: "node_modules" },
    exclude: { path: "\\.next" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
    },
  },
};
