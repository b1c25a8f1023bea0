declare module 'ode45-cash-karp' {
	interface Options {
		tol?: number;
		dtMaxMag?: number;
		verbose?: boolean;
	}
	interface Integrator {
		y: number[];
		/** Takes at most this many steps, not past the limit; true when the limit was not reached. */
		steps(count: number, limit: number): boolean;
	}
	export default function ode45(
		start: number[],
		derivative: (rate: number[], y: number[], t: number) => void,
		from: number,
		step: number,
		options?: Options
	): Integrator;
}
