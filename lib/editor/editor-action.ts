/** Everything that can be asked of an editor. Places are in a view's frame; `reach` in girdle widths. */
import type { Camera } from "@/lib/editor/camera";
import type { DrawnMark, MarkSubject } from "@/lib/editor/drawn-mark";
import type { Tool, ViewPoint } from "@/lib/editor/editor-state";
import type { Point, View } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

export type EditorAction<M extends DrawnMark> =
  // the pointer
  | { readonly kind: "press"; readonly place: ViewPoint; readonly reach: number }
  | { readonly kind: "drag"; readonly points: readonly Point[]; readonly reach: number }
  | { readonly kind: "release"; readonly reach: number }
  /** The press turned out to be part of a pinch: what it began is dropped, corners set before it stay. */
  | { readonly kind: "interrupt" }
  | { readonly kind: "hover"; readonly place: ViewPoint | null; readonly reach: number }
  // what is drawn with
  | { readonly kind: "choose-tool"; readonly tool: Tool }
  | { readonly kind: "choose-subject"; readonly subject: MarkSubject }
  // what is selected
  | { readonly kind: "select"; readonly id: string | null }
  | { readonly kind: "select-vertex"; readonly vertex: number | null }
  | { readonly kind: "highlight"; readonly id: string | null }
  // what changes the document
  | { readonly kind: "place"; readonly view: View; readonly shape: Shape }
  /** As `place`, with a subject of its own: neither what is chosen nor what is selected changes. */
  | { readonly kind: "add"; readonly view: View; readonly shape: Shape; readonly subject: MarkSubject }
  | { readonly kind: "replace"; readonly mark: M }
  | { readonly kind: "reshape"; readonly id: string; readonly shape: Shape }
  | { readonly kind: "remove"; readonly id: string }
  | { readonly kind: "insert-vertex"; readonly id: string; readonly edge: number }
  | { readonly kind: "delete-vertex"; readonly id: string; readonly vertex: number }
  | { readonly kind: "nudge"; readonly dx: number; readonly dy: number }
  | { readonly kind: "undo" }
  | { readonly kind: "redo" }
  // gestures
  | { readonly kind: "aim"; readonly id: string; readonly vertex: number | null }
  | { readonly kind: "finish" }
  | { readonly kind: "take-back-point" }
  | { readonly kind: "cancel" }
  /** A run of arrow keys is over. */
  | { readonly kind: "settle" }
  // what is seen
  | { readonly kind: "set-camera"; readonly view: View; readonly camera: Camera }
  | { readonly kind: "zoom"; readonly view: View; readonly factor: number; readonly anchor: Point }
  | { readonly kind: "pan"; readonly view: View; readonly dx: number; readonly dy: number }
  | { readonly kind: "move-crosshair"; readonly view: View; readonly dx: number; readonly dy: number }
  | { readonly kind: "press-crosshair"; readonly view: View; readonly reach: number }
  | { readonly kind: "dismiss-notice" };
