/** The evidence for a stray's cause in plain words with its numbers (SPEC 7.1). Says no more than was measured. */
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Cause } from "@/lib/plot/mark";
import type { Exhibit } from "@/lib/scoring/exhibit";
import type { Evidence } from "@/lib/scoring/find-causes";
import { boundDistance, measureDistance } from "@/lib/scoring/measure-distance";
import { measureEchoCover } from "@/lib/scoring/measure-echo-cover";
import {
  nameAway,
  nameClock,
  nameCount,
  nameDistance,
  namePlottedMark,
  nameReferenceMark,
} from "@/lib/scoring/name-things";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { ReferenceModel } from "@/lib/scoring/prepare-reference";

type Of<K extends Evidence["kind"]> = Extract<Evidence, { kind: K }>;

/** "mark m1 accounts for it", "was overlooked", "is optional", of a reference mark. */
function nameState({ prepared, laid, matching }: Exhibit, model: ReferenceModel): string {
  const index = prepared.marks.indexOf(model);
  const isOfModel = ({ reference }: { reference: number }) => reference === index;
  const by =
    matching.matched.find(isOfModel) ?? matching.merges.find(isOfModel) ?? matching.setAside.find(isOfModel);
  const mark = laid[by?.plotted ?? -1]?.mark;
  if (mark !== undefined) return `${namePlottedMark(mark)} accounts for it`;
  return model.optional ? "is optional" : "was overlooked";
}

const MISLED_BY: Readonly<Record<Cause, string>> = {
  dust: "dust that stays",
  echo: "an echo",
  glint: "a glint",
  double: "a feature that is drawn twice",
  fragment: "a piece of a larger feature",
  "other-view": "a feature that belongs to the other view",
  unexplained: "something that its instructor did not name",
};

function explainDecoy({ widthMm }: Exhibit, { decoy, distance }: Of<"decoy">): string[] {
  return [
    `It lies ${nameAway(distance, widthMm)} decoy ${decoy.id}, a place where this stone is known to mislead by ${MISLED_BY[decoy.cause]}.`,
  ];
}

function explainFragment(
  exhibit: Exhibit,
  { model, distance }: Of<"fragment">,
  { mark }: PlottedModel,
): string[] {
  const [was, is] = [mark.characteristic, model.mark.characteristic];
  const kind =
    was === is
      ? "It was plotted as the same characteristic"
      : `A ${toCharacteristicLabel(was)} is easily taken for a ${toCharacteristicLabel(is)}`;
  return [
    `It lies ${nameAway(distance, exhibit.widthMm)} ${nameReferenceMark(model.mark)}, and ${nameState(exhibit, model)}.`,
    `${kind}, so it reads as another piece of the same feature.`,
  ];
}

function explainDouble(
  exhibit: Exhibit,
  { model, standIn, distance }: Of<"double">,
  { mark }: PlottedModel,
): string[] {
  const how =
    standIn.facet === null
      ? "straight through the stone (the reference gives no depth)"
      : `traced through the stone and seen in ${standIn.facet}`;
  return [
    `It lies ${nameAway(distance, exhibit.widthMm)} the place where ${nameReferenceMark(model.mark)} shows in the ${mark.view} view, ${how}.`,
    `The reference draws it in the ${model.mark.view} view, and ${nameState(exhibit, model)}.`,
  ];
}

function explainEcho(exhibit: Exhibit, { model, echo, distance, count }: Of<"echo">): string[] {
  const { prepared, rubric, widthMm } = exhibit;
  const [through, ...mirrors] = echo.facets;
  const name = nameReferenceMark(model.mark);
  const away = nameAway(distance, widthMm);
  const seen =
    mirrors.length === 0
      ? `It lies ${away} the place where ${name} is seen a second time, through ${through}: refracted, not reflected.`
      : `It lies ${away} the echo of ${name} seen through ${through} by ${mirrors.join(", then ")}.`;
  const strength =
    mirrors.length === 0
      ? []
      : [
          `That image takes ${nameCount(mirrors.length, "reflection")} and has a strength of ${echo.strength.toFixed(2)} of 1.`,
        ];
  const cover = Math.round(100 * measureEchoCover(prepared, echo.view, rubric.near));
  const others =
    count > 1 ? `${count} predicted images lie within ${rubric.near} of it; this is the nearest. ` : "";
  return [
    seen,
    ...strength,
    `${others}The predicted images of this stone reach ${cover}% of the ${echo.view} view at that tolerance.`,
  ];
}

function explainGlint({ laid }: Exhibit, { glint }: Of<"glint">): string[] {
  const words = [
    `Its centre lies ${Math.round(100 * glint.rimShare)}% of the way from the centre of the stone to the girdle.`,
  ];
  const other = glint.opposite === null ? undefined : laid[glint.opposite.plotted]?.mark;
  if (glint.opposite !== null && other !== undefined) {
    const apart = (180 - glint.opposite.offDeg).toFixed(0);
    words.push(
      `Opposite it at the rim, ${apart} degrees round, lies ${namePlottedMark(other)}: tweezers touch a stone like that.`,
    );
  }
  if (glint.prong !== null) {
    words.push(
      `It lies ${glint.prong.offDeg.toFixed(0)} degrees from the prong at ${nameClock(glint.prong.clockDeg)}.`,
    );
  }
  return words;
}

function explainDust(
  { widthMm }: Exhibit,
  { isUnwiped, burst }: Of<"dust">,
  { mark, geometry }: PlottedModel,
): string[] {
  const size =
    mark.shape.kind === "dot" ? "It is a dot" : `It is only ${nameDistance(geometry.extent, widthMm)} across`;
  const words = [isUnwiped ? `${size}, and no wipe was confirmed on it.` : `${size}.`];
  if (burst !== null) {
    const seconds = ((burst.toMs - burst.fromMs) / 1000).toFixed(1);
    words.push(`It falls in a burst of ${burst.dots.length} dots drawn within ${seconds} s.`);
  }
  return words;
}

function explainUnexplained(exhibit: Exhibit, { mark, geometry }: PlottedModel): string[] {
  let nearest: { model: ReferenceModel; distance: number } | null = null;
  for (const model of exhibit.prepared.marks) {
    if (model.mark.view !== mark.view) continue;
    if (nearest !== null && boundDistance(model.geometry, geometry) >= nearest.distance) continue;
    const distance = measureDistance(model.geometry, geometry);
    if (nearest === null || distance < nearest.distance) nearest = { model, distance };
  }
  const near =
    nearest === null
      ? `The reference has no mark in the ${mark.view} view.`
      : `The nearest reference mark in this view, ${nameReferenceMark(nearest.model.mark)}, is ${nameDistance(nearest.distance, exhibit.widthMm)} away and ${nameState(exhibit, nearest.model)}.`;
  return [near, "No decoy, further piece, view from the other side, echo, glint or dust accounts for it."];
}

/** One sentence or more for a stray's evidence. */
export function explainEvidence(exhibit: Exhibit, evidence: Evidence, model: PlottedModel): string[] {
  switch (evidence.kind) {
    case "decoy":
      return explainDecoy(exhibit, evidence);
    case "fragment":
      return explainFragment(exhibit, evidence, model);
    case "double":
      return explainDouble(exhibit, evidence, model);
    case "echo":
      return explainEcho(exhibit, evidence);
    case "glint":
      return explainGlint(exhibit, evidence);
    case "dust":
      return explainDust(exhibit, evidence, model);
    case "unexplained":
      return explainUnexplained(exhibit, model);
  }
}
