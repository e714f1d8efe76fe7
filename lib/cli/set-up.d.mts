import type { ChildProcess } from "node:child_process";

export const ROOT: string;
export function ensureGenerated(): boolean;
export function ensureBuilt(buildDir?: string): boolean;
export function startServer(env: Readonly<Record<string, string>>, buildDir?: string): Promise<ChildProcess>;
