export function findServerReach(
  root: string,
  modules: { source: string; dependencies: { resolved: string }[] }[],
): string[];
