/** Keys for what is seen: zoom and pan. */
import { WHOLE_VIEW } from "@/lib/editor/camera";
import type { EditorMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import {
  ARROW_WAYS,
  ARROWS,
  type ArrowWay,
  type CommandContext,
  type EditorCommand,
} from "@/lib/editor/editor-command";

const ZOOM_STEP = 1.5;

function zoomBy(factor: number) {
  return ({ state, view }: CommandContext): readonly EditorAction<EditorMark>[] => [
    {
      kind: "zoom",
      view,
      factor,
      anchor: state.pointer?.view === view ? state.pointer.at : state.cameras[view].centre,
    },
  ];
}

function panBy(way: ArrowWay) {
  const [wayX, wayY] = ARROW_WAYS[way];
  return ({ state, view, viewport }: CommandContext): readonly EditorAction<EditorMark>[] => {
    const step = viewport.halfWidth / state.cameras[view].zoom / 2;
    return [{ kind: "pan", view, dx: wayX * step, dy: wayY * step }];
  };
}

/** In the order of the shortcuts panel. */
export const VIEW_COMMANDS: readonly EditorCommand[] = [
  {
    name: "zoom-in",
    label: "Zoom in",
    group: "View",
    keys: ["+", "="],
    undo: "leaves-alone",
    effect: zoomBy(ZOOM_STEP),
  },
  {
    name: "zoom-out",
    label: "Zoom out",
    group: "View",
    keys: ["-"],
    undo: "leaves-alone",
    effect: zoomBy(1 / ZOOM_STEP),
  },
  {
    name: "zoom-whole",
    label: "Whole view",
    group: "View",
    keys: ["0"],
    undo: "leaves-alone",
    effect: ({ view }) => [{ kind: "set-camera", view, camera: WHOLE_VIEW }],
  },
  ...ARROWS.map(
    (way): EditorCommand => ({
      name: `pan-${way}`,
      label: `Look ${way}`,
      family: "Look around",
      group: "View",
      keys: [`alt+arrow${way}`],
      undo: "leaves-alone",
      effect: panBy(way),
    }),
  ),
];
