import type { Tool } from "@/lib/editor/editor-state";

const PATHS: Readonly<Record<Tool, string>> = {
  select: "M6 3.5L17.5 11.5L12 12.8L9.2 18Z",
  dot: "M11 7.8a3.2 3.2 0 1 0 0.01 0Z",
  stroke: "M4 17C7 7 13 16 18 5",
  outline: "M6 6C9 2.5 16 3.5 18 8C20 13 14 18.5 9.5 17.5C4.5 16.5 3 10 6 6Z",
  pan: "M11 3v16M3 11h16M8.5 5.5L11 3l2.5 2.5M8.5 16.5L11 19l2.5-2.5M5.5 8.5L3 11l2.5 2.5M16.5 8.5L19 11l-2.5 2.5",
};
const IS_FILLED: ReadonlySet<Tool> = new Set(["dot"]);

/** The sign of a tool. */
export function ToolSign({ tool }: { readonly tool: Tool }) {
  return (
    <svg viewBox="0 0 22 22" width="20" height="20" aria-hidden="true">
      <path
        d={PATHS[tool]}
        fill={IS_FILLED.has(tool) ? "currentColor" : "none"}
        stroke="currentColor"
        strokeWidth="1.6"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}
