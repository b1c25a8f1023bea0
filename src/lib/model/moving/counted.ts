import { all_kg, type LoadCase } from '../load-case.ts';
import { PARKED_APART_m, spacing_m } from './spacing.ts';

/** A load, and what bears on the ice with it. */
export interface AtOnePlace {
	/** All that is there. */
	mass_kg: number;
	/** What comes on top of one of them, such as its trailer. */
	added_kg: number;
}

/** What of a load bears on the ice at one place. */
export interface Counted extends AtOnePlace {
	/** How its trailer counts; `null` without one. */
	trailer: 'together' | 'apart' | null;
	/** How the others count that go with it; `null` where it goes alone. */
	others: 'together' | 'apart' | null;
	/** Distance that parts what draws from what is drawn, and one from the next. */
	trailerSpacing_m: number;
	spacing_m: number;
}

/**
 * What counts together: a trailer with what draws it, and the loads of a group, unless they are kept
 * apart by the spacing. A hitch is a few metres long, and a sheet spreads a load over more than that.
 *
 * The spacing is that of the ice which one of them asks for, `asked_m`; on thicker ice a neighbour at the
 * same distance adds less than the thickness gives. All that are nearer are added in full, wherever they
 * stand: our choice, cautious.
 */
export function countedOf(load: LoadCase, asked_m: (at: AtOnePlace) => number): Counted {
	const { mass_kg, trailer, count } = load;
	const trailer_kg = trailer?.mass_kg ?? 0;
	const heavier = { mass_kg: Math.max(mass_kg, trailer_kg), added_kg: 0 };
	const trailerSpacing_m = spacingOf(load, asked_m(heavier));
	const isTrailed = trailer !== null && (trailer.apart_m ?? 0) >= trailerSpacing_m;
	const one = isTrailed ? heavier : { mass_kg: mass_kg + trailer_kg, added_kg: trailer_kg };
	const apart_m = spacingOf(load, asked_m(one));
	const isAlone = count <= 1;
	const isSpaced = (load.spacing_m ?? 0) >= apart_m;
	const all = { mass_kg: all_kg(load), added_kg: all_kg(load) - mass_kg };
	return {
		...(isAlone || isSpaced ? one : all),
		trailer: trailer === null ? null : partedAs(isTrailed),
		others: isAlone ? null : partedAs(isSpaced),
		trailerSpacing_m,
		spacing_m: apart_m
	};
}

function partedAs(isApart: boolean): 'together' | 'apart' {
	return isApart ? 'apart' : 'together';
}

function spacingOf({ parked_h }: LoadCase, asked_m: number): number {
	return Math.max(spacing_m(asked_m), parked_h > 0 ? PARKED_APART_m : 0);
}
