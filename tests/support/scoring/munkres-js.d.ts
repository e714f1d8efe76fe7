/** The part of munkres-js (Apache-2.0) that the tests call: [row, column] pairs of a least-cost assignment. */
declare module "munkres-js" {
  export default function computeMunkres(costs: number[][]): [number, number][];
}
