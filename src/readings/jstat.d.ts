/** The few functions of jstat in use; the package brings no types. */
declare module "jstat" {
	interface Distributions {
		readonly studentt: { inv(p: number, df: number): number };
		readonly normal: { inv(p: number, mean: number, standard: number): number };
		/** Regularised incomplete beta function I_x(a, b). */
		ibeta(x: number, a: number, b: number): number;
	}
	const jStat: Distributions;
	export default jStat;
}
