import type { ReactNode, Ref } from "react";
import type { DrawnItem, DrawnLink } from "@/components/plot-canvas/drawn-item";
import type { MarksChange } from "@/lib/editor/document-change";
import type { ReferenceDrawing } from "@/lib/editor/drawn-mark";
import type { CutName } from "@/lib/gem/cut-name";
import type { View } from "@/lib/gem/point";
import type { Proportions } from "@/lib/gem/proportions";
import type { Characteristic } from "@/lib/plot/characteristic";
import type { Decoy, PlottedMark } from "@/lib/plot/mark";
import type { Notation } from "@/lib/plot/notation";

/** One thing of an overlay. `key` is what highlighting goes by and must be unique over all layers. */
export interface LayerItem extends DrawnItem {
  readonly view: View;
  /** Said of it in the list and to a screen reader: "crystal, table near 2 o'clock, found". */
  readonly words: string;
}

/** A line between two of an overlay, or from one to the place that explains it. */
export interface LayerLink extends DrawnLink {
  readonly view: View;
}

/** Things laid over the diagram and not edited: a reference, a plot, where strays pile up. */
export interface OverlayLayer {
  readonly id: string;
  readonly label: string;
  readonly items: readonly LayerItem[];
  readonly links?: readonly LayerLink[];
  /** Whether it is shown to begin with; true when not given. */
  readonly isShown?: boolean;
}

interface CommonProps {
  readonly cut: CutName;
  readonly proportions: Proportions;
  /** The characteristics to choose from; the trade's own when not given. */
  readonly characteristics?: readonly Characteristic[];
  /** How the program draws; the default notation when not given. */
  readonly notation?: Notation;
  /** Said before the name of each view where two editors stand on one page: "Reference". */
  readonly name?: string;
  /** Nothing can be changed. The marks can still be selected and looked at. */
  readonly readOnly?: boolean;
  /** Overlays, drawn beneath the marks, each with a switch. */
  readonly layers?: readonly OverlayLayer[];
  /** The mark or overlay item to point out: its id or key. Controlled together with `onHighlight`. */
  readonly highlightId?: string | null;
  readonly onHighlight?: (id: string | null) => void;
  /** Told the key of an overlay item that was pressed with the select tool, where no mark lies over it. */
  readonly onLayerPick?: (key: string) => void;
  /** Told what is selected: a mark's id. */
  readonly onSelect?: (id: string | null) => void;
  /** At the end of the tool bar: the state of saving. */
  readonly toolBarEnd?: ReactNode;
  /** Beneath the tool bar, over the diagrams: a quiet note. */
  readonly note?: ReactNode;
  /** Beneath the table of marks: grades, hand-in. */
  readonly aside?: ReactNode;
}

/** What the page around a bench editor can do to it. */
export interface BenchHandle {
  /** Selects a mark, opens its row in the table and gives that the focus. */
  readonly goTo: (markId: string) => void;
}

/** A student plots. */
export interface BenchEditorProps extends CommonProps {
  readonly mode: "bench";
  /** Read once. To open another plot, give the editor another React `key`. */
  readonly initialMarks: readonly PlottedMark[];
  /** Once for each undo entry, and for each step of undo or redo: exactly a `marks` event of the sitting's log. */
  readonly onChange?: (change: MarksChange<PlottedMark>, marks: readonly PlottedMark[]) => void;
  /** Milliseconds since the sitting opened, for `atMs`; since the editor was opened when not given. */
  readonly nowMs?: () => number;
  /** Ends the ids of new marks, to keep them apart from another writer's; three random letters when not given. */
  readonly idSuffix?: string;
  readonly handle?: Ref<BenchHandle>;
}

/** What the page around a reference editor can do to its drawing; each step is an undo entry, told by `onChange`. */
export interface ReferenceHandle {
  readonly addDecoy: (decoy: Omit<Decoy, "id">) => void;
  /** Takes a mark or a decoy away by its id. */
  readonly remove: (id: string) => void;
}

/** An instructor draws a reference: marks and decoys in one list (`joinReferenceDrawings`, `splitReferenceDrawings`). */
export interface ReferenceEditorProps extends CommonProps {
  readonly mode: "reference";
  readonly initialMarks: readonly ReferenceDrawing[];
  readonly onChange?: (change: MarksChange<ReferenceDrawing>, marks: readonly ReferenceDrawing[]) => void;
  readonly idSuffix?: string;
  readonly handle?: Ref<ReferenceHandle>;
}

/** Overlays alone, to be read. */
export interface DebriefEditorProps extends CommonProps {
  readonly mode: "debrief";
  readonly layers: readonly OverlayLayer[];
  /** Leaves the list of overlay items out, where the page has its own rows that say the same. */
  readonly hasOwnList?: boolean;
  /** The diagrams alone, with neither tools nor switches. */
  readonly isPlain?: boolean;
}

export type PlotEditorProps = BenchEditorProps | ReferenceEditorProps | DebriefEditorProps;
