"use client";

import { Combobox, UnstyledButton, useCombobox } from "@mantine/core";
import { ChevronDown } from "lucide-react";
import { useEffect, useState } from "react";
import { MarkSign } from "@/components/plot-editor/mark-sign";
import classes from "@/components/plot-editor/subject-picker.module.css";
import {
  type CharacteristicsByName,
  DECOY_CAUSES,
  toStyleName,
  toSubjectKey,
  toSubjectLabel,
} from "@/components/plot-editor/subject-words";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import type { MarkSubject } from "@/lib/editor/drawn-mark";
import type { MarkStyleName, Notation } from "@/lib/plot/notation";

interface SubjectPickerProps {
  readonly editor: Editor;
  readonly hasDecoys: boolean;
  readonly characteristics: CharacteristicsByName;
  readonly notation: Notation;
  readonly isOpen: boolean;
  readonly onOpen: (isOpen: boolean) => void;
}

interface Choice {
  readonly subject: MarkSubject;
  readonly key: string;
  readonly label: string;
  readonly definition: string;
  readonly style: MarkStyleName;
}

const GROUPS: readonly { readonly style: MarkStyleName; readonly label: string }[] = [
  { style: "inside", label: "Inside" },
  { style: "surface", label: "Surface" },
  { style: "decoy", label: "Decoys: where this stone misleads" },
];

function listChoices(characteristics: CharacteristicsByName, hasDecoys: boolean): Choice[] {
  const real = [...characteristics.values()].map(
    ({ name, label, definition }): Choice => ({
      subject: { kind: "characteristic", name },
      key: name,
      label,
      definition,
      style: toStyleName({ kind: "characteristic", name }, characteristics),
    }),
  );
  if (!hasDecoys) return real;
  const decoys = DECOY_CAUSES.map((cause): Choice => {
    const subject: MarkSubject = { kind: "decoy", cause };
    const label = toSubjectLabel(subject, characteristics).replace("decoy: ", "");
    return {
      subject,
      key: toSubjectKey(subject),
      label,
      definition: "Students often mark this place; nothing is there.",
      style: "decoy",
    };
  });
  return [...real, ...decoys];
}

/** How well a choice answers what is looked for: 0 its name begins so, 1 its name has it, 2 its definition, else null. */
function rankChoice({ label, definition }: Choice, search: string): number | null {
  if (label.startsWith(search)) return 0;
  if (label.includes(search)) return 1;
  return definition.toLowerCase().includes(search) ? 2 : null;
}

/** Groups of choices that answer the search, the best answer first. Definitions count where no name answers. */
function findGroups(choices: readonly Choice[], typed: string) {
  const search = typed.trim().toLowerCase();
  const ranked = choices.flatMap((choice) => {
    const rank = search === "" ? 0 : rankChoice(choice, search);
    return rank === null ? [] : [{ choice, rank }];
  });
  const worst = ranked.some(({ rank }) => rank < 2) ? 1 : 2;
  return GROUPS.flatMap((group) => {
    const ofGroup = ranked
      .filter(({ choice, rank }) => choice.style === group.style && rank <= worst)
      .sort((a, b) => a.rank - b.rank);
    return ofGroup.length === 0
      ? []
      : [{ ...group, best: ofGroup[0]?.rank ?? 0, choices: ofGroup.map(({ choice }) => choice) }];
  }).sort((a, b) => a.best - b.best);
}

/** What is being drawn: a list in plain words, grouped, with a search. */
export function SubjectPicker(props: SubjectPickerProps) {
  const { editor, hasDecoys, characteristics, notation, isOpen, onOpen } = props;
  const subject = useEditorState(editor, (state) => state.subject);
  const [search, setSearch] = useState("");
  const combobox = useCombobox({
    opened: isOpen,
    onOpenedChange: onOpen,
    onDropdownClose: () => {
      combobox.resetSelectedOption();
      combobox.focusTarget();
      setSearch("");
    },
    onDropdownOpen: () => combobox.focusSearchInput(),
  });
  useEffect(() => {
    if (isOpen) combobox.focusSearchInput();
  }, [isOpen, combobox.focusSearchInput]);
  const choices = listChoices(characteristics, hasDecoys);
  const groups = findGroups(choices, search);
  return (
    <Combobox
      store={combobox}
      width={hasDecoys ? 820 : 560}
      position="bottom-start"
      withinPortal={false}
      onOptionSubmit={(key) => {
        const choice = choices.find((one) => one.key === key);
        if (choice !== undefined) editor.dispatch({ kind: "choose-subject", subject: choice.subject });
        combobox.closeDropdown();
      }}
    >
      <Combobox.Target withAriaAttributes={false}>
        <UnstyledButton
          className={classes.target}
          aria-haspopup="listbox"
          aria-expanded={isOpen}
          data-empty={subject === null || undefined}
          onClick={() => onOpen(!isOpen)}
        >
          {subject === null ? (
            <span>Choose what you see</span>
          ) : (
            <>
              <MarkSign style={notation[toStyleName(subject, characteristics)]} />
              <span className={classes.chosen}>{toSubjectLabel(subject, characteristics)}</span>
            </>
          )}
          <ChevronDown size={16} />
        </UnstyledButton>
      </Combobox.Target>
      <Combobox.Dropdown className={classes.dropdown}>
        <Combobox.Search
          value={search}
          aria-label="Search characteristics"
          placeholder="Search"
          onChange={(event) => {
            setSearch(event.currentTarget.value);
            combobox.selectFirstOption();
          }}
        />
        <Combobox.Options className={classes.options} aria-label="Characteristics" tabIndex={0}>
          {groups.length === 0 && <Combobox.Empty>Nothing by that name</Combobox.Empty>}
          {groups.map(({ style, label, choices: ofGroup }) => (
            <Combobox.Group key={style} label={label}>
              {ofGroup.map((one) => (
                <Combobox.Option
                  key={one.key}
                  value={one.key}
                  className={classes.option}
                  title={one.definition}
                >
                  <MarkSign style={notation[one.style]} />
                  <span>{one.label}</span>
                </Combobox.Option>
              ))}
            </Combobox.Group>
          ))}
        </Combobox.Options>
      </Combobox.Dropdown>
    </Combobox>
  );
}
