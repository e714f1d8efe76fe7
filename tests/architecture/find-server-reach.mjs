/**
 * What client files reach: from every file that opens with "use client", along imports of any depth, to a
 * server-only folder. A file that opens with "use server" is where the bundler puts a network call in place of the
 * import, so the walk ends there; that file authorises on its own.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { SERVER_ONLY } from "./walls.mjs";

const DIRECTIVE = /^(?:\s|\/\*[\s\S]*?\*\/|\/\/[^\n]*\n)*["']use (client|server)["']/;
const FORBIDDEN = new RegExp(`^lib/(${SERVER_ONLY.join("|")})/`);

function readDirective(root, file) {
  return DIRECTIVE.exec(readFileSync(join(root, file), "utf8"))?.[1] ?? null;
}

/**
 * @param {string} root folder that the modules' paths are relative to
 * @param {{source: string, dependencies: {resolved: string, typeOnly?: boolean}[]}[]} modules of dependency-cruiser
 * @returns {string[]} one `client file -> … -> server-only file` for each forbidden reach
 */
export function findServerReach(root, modules) {
  const ours = modules.filter(
    ({ source }) => /^(app|components|lib)\//.test(source) && /\.tsx?$/.test(source),
  );
  const bySource = new Map(ours.map((module) => [module.source, module]));
  const directive = new Map(ours.map(({ source }) => [source, readDirective(root, source)]));
  const reaches = [];
  for (const { source } of ours) {
    if (directive.get(source) !== "client") continue;
    const seen = new Set([source]);
    const queue = [[source]];
    for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
      const last = path[path.length - 1];
      if (FORBIDDEN.test(last)) {
        reaches.push(path.join(" -> "));
        continue;
      }
      if (directive.get(last) === "server") continue;
      for (const { resolved } of bySource.get(last)?.dependencies ?? []) {
        if (!bySource.has(resolved) || seen.has(resolved)) continue;
        seen.add(resolved);
        queue.push([...path, resolved]);
      }
    }
  }
  return reaches;
}
