/** Keys for drawing: tools, the crosshair and the arrow keys, placing, finishing, leaving off. */
import { getPxPerWidth } from "@/lib/editor/camera";
import {
  ARROW_WAYS,
  ARROWS,
  type ArrowWay,
  EDITING_MODES,
  type EditorCommand,
  type EditorMode,
} from "@/lib/editor/editor-command";
import type { Tool } from "@/lib/editor/editor-state";
import { findMark } from "@/lib/editor/plot-document";

/** The arrow keys move by this many pixels of the screen, so that they are finer the closer one looks. */
const STEP_PX = 4;
const LONG_STEP_PX = 24;
/** How far off the crosshair a mark may be and still be meant, px. */
const REACH_PX = 12;

function chooseTool(tool: Tool, label: string, key: string, modes?: readonly EditorMode[]): EditorCommand {
  return {
    name: `tool-${tool}`,
    label,
    group: "Draw",
    keys: [key],
    undo: "leaves-alone",
    ...(modes === undefined ? {} : { modes }),
    effect: () => [{ kind: "choose-tool", tool }],
  };
}

/** Arrow keys: the selected mark or vertex with the select tool, else the crosshair. */
function moveBy(way: ArrowWay, isFar: boolean): EditorCommand {
  const [wayX, wayY] = ARROW_WAYS[way];
  const px = isFar ? LONG_STEP_PX : STEP_PX;
  return {
    name: `${isFar ? "leap" : "move"}-${way}`,
    label: `Move ${way}, ${isFar ? "farther" : "finely"}`,
    family: `Move the crosshair or the selected mark, ${isFar ? "farther" : "finely"}`,
    group: "Draw",
    keys: [`${isFar ? "shift+" : ""}arrow${way}`],
    undo: "makes-entry",
    isNudge: true,
    effect: ({ state, view, viewport, mode }) => {
      const step = px / getPxPerWidth(state.cameras[view], viewport);
      const [dx, dy] = [wayX * step, wayY * step];
      const selected = findMark(state.document, state.selectedId);
      const isMark = mode !== "debrief" && state.tool === "select" && selected?.view === view;
      return [isMark ? { kind: "nudge", dx, dy } : { kind: "move-crosshair", view, dx, dy }];
    },
  };
}

/** In the order of the shortcuts panel. */
export const DRAW_COMMANDS: readonly EditorCommand[] = [
  chooseTool("select", "Select and move", "v"),
  chooseTool("dot", "Dot", "d", EDITING_MODES),
  chooseTool("stroke", "Stroke", "s", EDITING_MODES),
  chooseTool("outline", "Outline", "o", EDITING_MODES),
  chooseTool("pan", "Pan", "h"),
  ...ARROWS.map((way) => moveBy(way, false)),
  ...ARROWS.map((way) => moveBy(way, true)),
  {
    name: "press",
    label: "Place, set a corner, or select at the crosshair; twice in one place ends a stroke",
    group: "Draw",
    keys: ["enter"],
    undo: "makes-entry",
    effect: ({ state, view, viewport }) => {
      const reach = REACH_PX / getPxPerWidth(state.cameras[view], viewport);
      return [{ kind: "press-crosshair", view, reach }];
    },
  },
  {
    name: "finish",
    label: "Finish the stroke or outline",
    group: "Draw",
    keys: ["shift+enter", "f"],
    undo: "makes-entry",
    modes: EDITING_MODES,
    effect: () => [{ kind: "finish" }],
  },
  {
    name: "cancel",
    label: "Leave off, step by step: drawing, point, selection",
    group: "Draw",
    keys: ["escape"],
    undo: "leaves-alone",
    effect: () => [{ kind: "cancel" }],
  },
];
