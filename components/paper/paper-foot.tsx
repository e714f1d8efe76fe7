import { Text } from "@react-pdf/renderer";
import { MARGIN, styles } from "@/components/paper/paper-styles";

/** At the foot of each page: what a classroom grade is, and which page this is. */
export function PaperFoot({ what }: { what: string }) {
  return (
    <>
      <Text style={[styles.foot, { left: MARGIN }]} fixed>
        {what}. A classroom grade is practice, not a laboratory report or an appraisal.
      </Text>
      <Text
        style={[styles.foot, { right: MARGIN, width: 40, textAlign: "right" }]}
        fixed
        render={({ pageNumber, totalPages }) => `${pageNumber} of ${totalPages}`}
      />
    </>
  );
}
