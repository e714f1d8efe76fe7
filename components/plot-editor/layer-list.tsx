"use client";

import { Checkbox, UnstyledButton } from "@mantine/core";
import classes from "@/components/plot-editor/layer-list.module.css";
import { MarkSign } from "@/components/plot-editor/mark-sign";
import type { OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import type { Notation } from "@/lib/plot/notation";

interface LayerSwitchesProps {
  readonly layers: readonly OverlayLayer[];
  readonly hiddenIds: ReadonlySet<string>;
  readonly onToggle: (id: string) => void;
}

/** A switch for each overlay. */
export function LayerSwitches({ layers, hiddenIds, onToggle }: LayerSwitchesProps) {
  if (layers.length === 0) return null;
  return (
    <fieldset className={classes.switches}>
      <legend className="visually-hidden">Show</legend>
      {layers.map(({ id, label }) => (
        <Checkbox
          key={id}
          iconColor="var(--lw-ground)"
          label={label}
          checked={!hiddenIds.has(id)}
          onChange={() => onToggle(id)}
        />
      ))}
    </fieldset>
  );
}

interface LayerItemsProps {
  readonly editor: Editor;
  readonly layers: readonly OverlayLayer[];
  readonly notation: Notation;
}

/** What the overlays hold, in words; pointing at one shows it on the diagram, and back. */
export function LayerItems({ editor, layers, notation }: LayerItemsProps) {
  const highlightedId = useEditorState(editor, (state) => state.highlightedId);
  const highlight = (id: string | null) => editor.dispatch({ kind: "highlight", id });
  return (
    <section className={classes.section} aria-label="What is shown">
      {layers.map((layer) => (
        <div key={layer.id}>
          <h2 className={classes.heading}>{layer.label}</h2>
          <ul className={classes.items}>
            {layer.items.map((item) => (
              <li key={item.key}>
                <UnstyledButton
                  className={classes.item}
                  data-highlighted={item.key === highlightedId || undefined}
                  onPointerEnter={() => highlight(item.key)}
                  onPointerLeave={() => highlight(null)}
                  onFocus={() => highlight(item.key)}
                  onBlur={() => highlight(null)}
                >
                  <MarkSign style={notation[item.style]} text={item.callout ?? ""} />
                  <span>{item.words}</span>
                </UnstyledButton>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
