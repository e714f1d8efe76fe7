/**
 * The walls between the parts, as one table: a folder imports itself and what it lists, type imports included.
 * The rules of dependency-cruiser are generated from it, and a test plants violations to see them caught.
 */

/** Folder of lib -> folders of lib that it may import. */
export const LIB_WALLS = {
  base: [],
  gem: ["base"],
  plot: ["base", "gem"],
  scoring: ["base", "gem", "plot"],
  agreement: ["base", "plot"],
  editor: ["base", "gem", "plot"],
  demo: ["base", "gem", "plot"],
  access: ["base", "plot"],
  exchange: ["base", "plot", "agreement"],
  data: ["base", "plot", "access"],
  workflows: ["base", "gem", "plot", "scoring", "agreement", "demo", "access", "exchange", "data"],
  cli: ["base", "gem", "plot", "scoring", "agreement", "demo", "access", "exchange", "data", "workflows"],
};

/** Server-only folders: no component imports them, and no client file reaches them at any distance. */
export const SERVER_ONLY = ["data", "workflows", "cli"];

/** Packages that only some folders may import. */
export const PACKAGE_WALLS = [
  {
    package: "(@prisma/|libsql|@libsql/|generated/prisma|prisma/generated)",
    only: "^(lib/data|tests|prisma)/",
  },
  { package: "(react|react-dom|react-konva|konva|@mantine/[a-z]+)/", only: "^(app|components|tests)/" },
  {
    package: "node_modules/(next|next-auth)/",
    only: "^(app|components|lib/data|lib/workflows|tests)/|^[^/]+$",
  },
];

const pathOf = (folders) => `^lib/(${folders.join("|")})/`;

/** The rules in dependency-cruiser's form. */
export function toRules() {
  const libRules = Object.entries(LIB_WALLS).map(([folder, allowed]) => ({
    name: `lib-${folder}`,
    severity: "error",
    comment: `lib/${folder} imports itself${allowed.length > 0 ? ` and ${allowed.join(", ")}` : " alone"}`,
    from: { path: `^lib/${folder}/` },
    to: { path: "^(lib|app|components|tests)/", pathNot: pathOf([folder, ...allowed]) },
  }));
  return [
    ...libRules,
    {
      name: "lib-has-no-loose-files",
      severity: "error",
      comment: "every file of lib stands in a folder that the table names",
      from: { path: "^lib/", pathNot: pathOf(Object.keys(LIB_WALLS)) },
      to: {},
    },
    {
      name: "scoring-has-one-door",
      severity: "error",
      comment: "the engine is entered only through score-plot",
      from: { path: "^(app|components|lib)/", pathNot: "^lib/scoring/" },
      to: { path: "^lib/scoring/", pathNot: "^lib/scoring/score-plot\\.ts$" },
    },
    {
      name: "components-stay-pure",
      severity: "error",
      comment: "components import pure lib and each other",
      from: { path: "^components/" },
      to: { path: `^(app|tests)/|${pathOf(SERVER_ONLY)}` },
    },
    {
      name: "app-has-no-prisma",
      severity: "error",
      comment: "app is thin: components and lib, never tests",
      from: { path: "^app/" },
      to: { path: "^tests/" },
    },
    ...PACKAGE_WALLS.map(({ package: packagePath, only }) => ({
      name: `package ${packagePath}`,
      severity: "error",
      comment: `only ${only} imports it`,
      from: { path: "^(app|components|lib)/", pathNot: only },
      to: { path: packagePath },
    })),
    {
      name: "no-circular",
      severity: "error",
      comment: "no import cycles",
      from: { path: "^(app|components|lib)/" },
      to: { circular: true },
    },
  ];
}
