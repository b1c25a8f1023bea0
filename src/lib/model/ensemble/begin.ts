import type { IsoDate } from '../calendar.ts';
import { parametersFor, type Parameters } from '../parameters.ts';
import { openMembers, type Members } from './members.ts';
import { drawPaces, type Paces } from './pace.ts';
import { normalDraws, seededRandom } from './random.ts';
import type { EnsembleInput } from './run.ts';
import { drawSpots, type Spots } from './spots.ts';
import { bendParameters, drawTraits, type MemberParameters, type Traits } from './traits.ts';

/** A running ensemble. */
export interface Ensemble {
	members: Members;
	traits: Traits;
	paces: Paces;
	base: Parameters;
	/** The members' parameters; made anew when a reading has moved the traits. */
	bent: MemberParameters;
	/** Day of the season on which each member freezes over. */
	startsOn: Uint16Array;
	scenarioOf: Uint16Array;
	/** What a day nobody reported may have done, as normal deviates. */
	gap: Float64Array;
	/** Snow that nobody reported, in the usual amount. */
	unknownSnow: Float64Array;
	spots: Spots;
	random: () => number;
	/** Numbers that `random` has given so far. */
	drawn: () => number;
	lastReadIndex: number;
}

const UNKNOWN_SNOW_SPREAD = 0.6; // of the logarithm of the usual amount [M-lo]

/** An ensemble on the first day it may have frozen over, all in open water. */
export function begin(input: EnsembleInput): Ensemble {
	const { members: count, lake } = input;
	const { random, drawn } = countedRandom(input.seed, 0);
	const freezeUp = random() - 0.5;
	const span = input.freezeUpBy === null ? 0 : dayCount(input.freezeUpOn, input.freezeUpBy);
	const scenarios = Math.max(1, input.scenarios.length);
	const base = input.parameters ?? parametersFor(lake);
	const traits = traitsOf(input, random);
	return {
		members: openMembers(count),
		traits,
		paces: drawPaces(count, random),
		base,
		bent: bendParameters(base, traits),
		startsOn: Uint16Array.from({ length: count }, (_, i) =>
			Math.min(span, Math.floor(((i * GOLDEN + freezeUp + 1) % 1) * (span + 1)))
		),
		scenarioOf: Uint16Array.from({ length: count }, (_, i) => i % scenarios),
		gap: normalDraws(count, random),
		unknownSnow: normalDraws(count, random).map((z) => Math.exp(UNKNOWN_SNOW_SPREAD * z)),
		spots: drawSpots(count, random),
		random,
		drawn,
		lastReadIndex: 0
	};
}

/** The ensemble as it is now, which goes on apart from it and draws what it would have drawn. */
export function copyEnsemble(ensemble: Ensemble, seed: number): Ensemble {
	const { members, paces, traits } = ensemble;
	const { random, drawn } = countedRandom(seed, ensemble.drawn());
	return {
		...ensemble,
		members: copyMembers(members),
		traits: {
			site: traits.site.map((z) => z.slice()),
			winter: traits.winter.map((z) => z.slice())
		},
		paces: { ...paces, frost: paces.frost.slice(), thaw: paces.thaw.slice(), random },
		random,
		drawn
	};
}

function copyMembers(members: Members): Members {
	const copy = openMembers(members.count);
	copy.snow_m.set(members.snow_m);
	copy.snowDensity_kg_m3.set(members.snowDensity_kg_m3);
	copy.slush_m.set(members.slush_m);
	copy.white_m.set(members.white_m);
	copy.clear_m.set(members.clear_m);
	copy.liquidFraction.set(members.liquidFraction);
	copy.crust_m.set(members.crust_m);
	copy.waterHeat_J_m2.set(members.waterHeat_J_m2);
	return copy;
}

/** A generator that counts, so that a copy can be brought to the same place. */
function countedRandom(seed: number, skip: number): { random: () => number; drawn: () => number } {
	const next = seededRandom(seed);
	for (let i = 0; i < skip; i++) next();
	let count = skip;
	return {
		random: () => {
			count++;
			return next();
		},
		drawn: () => count
	};
}

function traitsOf({ members, memory, siteTraits }: EnsembleInput, random: () => number): Traits {
	const drawn = drawTraits(members, random, memory);
	return siteTraits === undefined ? drawn : { ...drawn, site: siteTraits.map((z) => z.slice()) };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2; // multiples of it fill the unit interval evenly

function dayCount(from: IsoDate, to: IsoDate): number {
	return Math.max(0, Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000));
}
