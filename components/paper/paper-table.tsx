/** A table on paper. */
import { Text, View } from "@react-pdf/renderer";
import { styles } from "@/components/paper/paper-styles";

export interface PaperColumn {
  readonly head: string;
  /** Share of the width; the columns' shares are put in relation to one another. */
  readonly share: number;
  readonly isNumber?: boolean;
}

export interface PaperTableProps {
  title: string;
  /** The finding in a sentence, under the title. */
  lead?: string;
  columns: readonly PaperColumn[];
  rows: readonly (readonly string[])[];
  fontSize?: number;
}

const toCell = ({ share, isNumber }: PaperColumn) =>
  ({
    flexGrow: share,
    flexShrink: 1,
    flexBasis: 0,
    paddingRight: 4,
    textAlign: isNumber === true ? "right" : "left",
  }) as const;

/** Rows under their heads; nothing where there is no row. */
export function PaperTable({ title, lead, columns, rows, fontSize = 9 }: PaperTableProps) {
  if (rows.length === 0) return null;
  return (
    <View>
      <View wrap={false} minPresenceAhead={40}>
        <Text style={styles.heading}>{title}</Text>
        {lead !== undefined && <Text style={[styles.muted, { marginBottom: 3 }]}>{lead}</Text>}
        <View style={styles.headRow}>
          {columns.map((column) => (
            <Text key={column.head} style={[toCell(column), { fontWeight: 700, fontSize: fontSize - 0.5 }]}>
              {column.head}
            </Text>
          ))}
        </View>
      </View>
      {rows.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows never change.
        <View key={index} style={styles.row} wrap={false}>
          {columns.map((column, at) => (
            <Text key={column.head} style={[toCell(column), { fontSize }]}>
              {row[at] ?? ""}
            </Text>
          ))}
        </View>
      ))}
    </View>
  );
}
