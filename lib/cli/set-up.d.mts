export const ROOT: string;
export function ensureBuilt(buildDir?: string): boolean;
