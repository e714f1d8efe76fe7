export const LIB_WALLS: Record<string, string[]>;
export const SERVER_ONLY: string[];
export function toRules(): object[];
