import { useMemo } from "react";
import type { DrawnItem, DrawnLink } from "@/components/plot-canvas/drawn-item";
import type { DrawnHandle } from "@/components/plot-canvas/paint-overlay";
import type { DrawnDraft } from "@/components/plot-canvas/plot-view";
import type { OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { type CharacteristicsByName, toDrawnItem, toStyleName } from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { useStableList } from "@/components/plot-editor/use-stable-list";
import { getPxPerWidth, type Viewport } from "@/lib/editor/camera";
import { toShape } from "@/lib/editor/drawn-mark";
import { listHandles } from "@/lib/editor/find-at-point";
import type { Gesture } from "@/lib/editor/gesture";
import { findMark, listMarks } from "@/lib/editor/plot-document";
import type { View } from "@/lib/gem/point";

/** Handles nearer to one another than this are not all drawn, px. */
const HANDLES_APART_PX = 8;
export const HANDLE_REACH_PX = 9;

const isOfView = (gesture: Gesture | null, view: View) =>
  gesture !== null && gesture.kind !== "aiming" && gesture.view === view ? gesture : null;

/** Everything that one view shows, each part the same object until it changes. */
export function useViewDrawing(
  editor: Editor,
  view: View,
  viewport: Viewport,
  characteristics: CharacteristicsByName,
  layers: readonly OverlayLayer[],
) {
  const document = useEditorState(editor, (state) => state.document);
  const camera = useEditorState(editor, (state) => state.cameras[view]);
  const gesture = useEditorState(editor, (state) => isOfView(state.gesture, view));
  const subject = useEditorState(editor, (state) => state.subject);
  const selectedId = useEditorState(editor, (state) => state.selectedId);
  const selectedVertex = useEditorState(editor, (state) => state.selectedVertex);
  const highlightedId = useEditorState(editor, (state) => state.highlightedId);
  const hasHandles = useEditorState(editor, (state) => state.tool === "select");
  const pointer = useEditorState(editor, (state) =>
    state.gesture?.kind === "drawing" && state.pointer?.view === view ? state.pointer.at : null,
  );

  const allItems = useMemo<readonly DrawnItem[]>(() => {
    const beneath = layers.flatMap((layer) => layer.items.filter((item) => item.view === view));
    const marks = listMarks(document).flatMap((mark, index) =>
      mark.view === view ? [toDrawnItem(mark, index + 1, characteristics)] : [],
    );
    return [...beneath, ...marks];
  }, [document, view, characteristics, layers]);
  const items = useStableList(allItems);
  const links = useMemo<readonly DrawnLink[]>(
    () => layers.flatMap((layer) => (layer.links ?? []).filter((link) => link.view === view)),
    [layers, view],
  );

  const style = subject === null ? "inside" : toStyleName(subject, characteristics);
  const active = useMemo<DrawnItem | null>(() => {
    if (gesture === null || gesture.kind === "drawing") return null;
    if (gesture.kind === "placing-dot") {
      return { key: "new", shape: toShape("dot", [gesture.at]), style, callout: null };
    }
    const item = items.find(({ key }) => key === gesture.id);
    return item === undefined || !gesture.isUnderWay ? null : { ...item, shape: gesture.shape };
  }, [gesture, items, style]);
  const draft = useMemo<DrawnDraft | null>(() => {
    if (gesture?.kind !== "drawing") return null;
    const { points, pressed, freehand } = gesture;
    if (freehand !== null) return { points: freehand, next: null, style };
    return { points: pressed === null ? points : [...points, pressed], next: pointer, style };
  }, [gesture, pointer, style]);

  const handles = useMemo<readonly DrawnHandle[]>(() => {
    const mark = findMark(document, selectedId);
    if (editor.getEnvironment().readOnly || !hasHandles || mark?.view !== view || viewport.sizePx === 0)
      return [];
    const scale = getPxPerWidth(camera, viewport);
    const shape = active?.key === mark.id ? active.shape : mark.shape;
    let last: readonly [number, number] | null = null;
    return listHandles(shape, HANDLE_REACH_PX / scale)
      .filter(({ kind, index, at }) => {
        if (kind === "edge" || index === selectedVertex) return true;
        const isApart =
          last === null || Math.hypot(at[0] - last[0], at[1] - last[1]) * scale >= HANDLES_APART_PX;
        if (isApart) last = at;
        return isApart;
      })
      .map(({ kind, index, at }) => ({
        kind,
        at,
        isSelected: kind === "vertex" && index === selectedVertex,
      }));
  }, [editor, document, selectedId, selectedVertex, hasHandles, view, viewport, camera, active]);

  const isMine = (key: string | null) =>
    key !== null && items.some((item) => item.key === key) ? key : null;
  return {
    camera,
    items,
    links,
    active,
    draft,
    handles,
    hiddenKey: active !== null && active.key !== "new" ? active.key : null,
    selectedKey: isMine(selectedId),
    highlightedKey: isMine(highlightedId),
  };
}
