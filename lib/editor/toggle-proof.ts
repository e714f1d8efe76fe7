import { type PlottedMark, PROOFS, type Proof } from "@/lib/plot/mark";

/** The mark with the proof given or taken back; no empty list is kept. */
export function toggleProof(mark: PlottedMark, proof: Proof): PlottedMark {
  const { proofs = [], ...rest } = mark;
  const next = PROOFS.filter((one) => (one === proof ? !proofs.includes(one) : proofs.includes(one)));
  return next.length === 0 ? rest : { ...rest, proofs: next };
}
