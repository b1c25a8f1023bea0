import ode45 from 'ode45-cash-karp';

/** What the growth of a cold winter depends on, in SI. */
export interface GrowthProblem {
	exchange: number;
	waterHeat: number;
	skyLoss: number;
	thinFraction: number;
	thinRatio: number;
	snowRatio: number;
	settledDensity: number;
	settling_h: number;
	settlingCold: number;
	/** Lasting white ice on top of the clear. */
	white: number;
	/** One entry a day. */
	air: number[];
	snowfall: number[];
}

/**
 * Clear ice at the end of each day, by a general-purpose integrator (Cash-Karp 4/5) over the rate
 * equations as a textbook writes them. Shares nothing with the model but the constants' values:
 *
 *   dh/dt = (q - q_w)/(916 × 334000),  q = (min(1, -T) R_sky/H - T)/(h_s/k_s + w/2.0 + h/2.24 + 1/H)
 *   q for a part of the lake with snow no deeper than its share of the ice, and for the rest
 *   k_s with vapour: (1 + 0.5 exp(0.075 T/2))/(1 + 0.5 exp(0.075 × -14.6)) times that of the law
 *   dm/dt = snowfall,  dh_s/dt = snowfall/ρ_new - h_s (ρ_max - ρ)/(τ ρ)
 */
export function integrate(problem: GrowthProblem): number[] {
	let state = [0, 0, 0];
	return problem.air.map((air, day) => {
		const rates = dayRates(problem, air, (problem.snowfall[day] ?? 0) / 86400);
		const run = ode45(state, rates, 0, 1, { tol: 1e-9, dtMaxMag: 3600, verbose: false });
		while (run.steps(1000, 86400)) continue;
		state = [...run.y];
		return state[2] ?? NaN;
	});
}

function dayRates(problem: GrowthProblem, air: number, snowfall: number) {
	const fresh = 67.92 + 51.25 * Math.exp(Math.min(0, air) / 2.59);
	const slowness = 3600 * problem.settling_h * Math.exp(problem.settlingCold * Math.max(0, -air));
	const vapour = (snow: number) => 1 + 0.5 * Math.exp(0.075 * snow);
	const warmth = vapour(Math.min(0, air) / 2) / vapour(-14.6);
	return (rate: number[], [mass = 0, depth = 0, ice = 0]: number[]): void => {
		const density = depth > 1e-7 ? mass / depth : fresh;
		const lacking = Math.max(0, problem.settledDensity - density);
		rate[0] = snowfall;
		rate[1] = snowfall / fresh - (depth * lacking) / (slowness * density);
		const snow = problem.snowRatio * warmth * conductivity(density / 1000);
		const below = problem.white / 2.0 + ice / 2.24 + 1 / problem.exchange;
		const thin = Math.min(depth, problem.thinRatio * (problem.white + ice));
		const conductance =
			(1 - problem.thinFraction) / (depth / snow + below) +
			problem.thinFraction / (thin / snow + below);
		const clear = Math.min(1, -air);
		const cold = air < 0 ? (clear * problem.skyLoss) / problem.exchange - air : 0;
		rate[2] = (cold * conductance - problem.waterHeat) / (916 * 334000);
	};
}

function conductivity(rho: number): number {
	if (rho < 0.156) return 0.023 + 0.234 * rho;
	return 0.138 - 1.01 * rho + 3.233 * rho * rho;
}
