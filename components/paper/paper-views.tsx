import { Text, View } from "@react-pdf/renderer";
import type { PaperSize } from "@/components/paper/paper-size";
import { MARGIN, PAPER_POINTS, styles } from "@/components/paper/paper-styles";
import { getPaperReach, PaperView } from "@/components/paper/paper-view";
import type { LayerItem, LayerLink } from "@/components/plot-editor/plot-editor-props";
import { VIEWS } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";

const GAP = 10;
const CAPTIONS = { crown: "Crown", pavilion: "Pavilion, turned over left to right" } as const;

export interface PaperViewsProps {
  solid: Solid;
  paper: PaperSize;
  items?: readonly LayerItem[];
  links?: readonly LayerLink[];
}

/** Both views side by side, to one scale. */
export function PaperViews({ solid, paper, items = [], links = [] }: PaperViewsProps) {
  const size = (PAPER_POINTS[paper][0] - 2 * MARGIN - GAP) / 2;
  const reach = getPaperReach(solid);
  return (
    <View style={{ flexDirection: "row", gap: GAP }} wrap={false}>
      {VIEWS.map((view) => (
        <View key={view} style={{ width: size }}>
          <PaperView
            solid={solid}
            view={view}
            reach={reach}
            size={size}
            items={items.filter((item) => item.view === view)}
            links={links.filter((link) => link.view === view)}
          />
          <Text style={[styles.muted, { textAlign: "center" }]}>{CAPTIONS[view]}</Text>
        </View>
      ))}
    </View>
  );
}
