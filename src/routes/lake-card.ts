import { nameAmid } from '#lib/model/load-name.ts';
import type { DigestOf, DigestState } from '#lib/server/services/digests/digests.ts';
import type { LakeDigest } from '#lib/server/services/digests/digest.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import type { SiteChoice } from '#lib/ui/site-link.ts';
import { markOf } from '#lib/ui/mark-names.ts';
import { attentionOf, byAttention, bySite, cardCautions, type Attention } from './attention.ts';
import { forecastWords, observedWords } from './lakes/[lake]/upkeep-words.ts';
import { nextDate } from './next-date.ts';

const HOUR_MS = 3_600_000;

/** One lake at a glance, told of one site of it. */
export function lakeCard(digest: LakeDigest, now: Date, sites: readonly SiteChoice[] = []) {
	const { id, name, isInvented, site, today, asOf, status, iceOutOn, growth_m_d } = digest;
	const attention = attentionOf(digest);
	return {
		id,
		name,
		isInvented,
		site,
		/** Which of its sites; `null` where it has one. */
		siteName: sites.length > 1 ? (sites.find((each) => each.id === site)?.name ?? site) : null,
		sites: sites.length,
		/** What is known of the rest of them. */
		beside: [] as SiteBeside[],
		today,
		asOf,
		status,
		iceOutOn,
		day: knownDays(digest.day ? [digest.day] : [])[0] ?? null,
		growth_m_d,
		boundChange_m: digest.boundChange_m,
		newLoads: digest.loads.filter(({ isNew }) => isNew).map(nameAmid),
		warmSince: digest.warmSince,
		loads: digest.loads.map((load) => ({
			id: load.id,
			name: load.name,
			status: load.status,
			mark: markOf(load)
		})),
		next: nextDate(digest),
		readingOn: digest.lastReadingOn,
		...weatherOf(digest, now),
		attention,
		...cardCautions(digest, attention)
	};
}

/** Told from now on; an invented lake keeps a today of its own, and the ages of that. */
function weatherOf({ upkeep, isInvented }: LakeDigest, now: Date) {
	const since_h = (at: Date | null, then_h: number | null) =>
		at === null || isInvented
			? then_h
			: Math.max(0, Math.floor((now.getTime() - at.getTime()) / HOUR_MS));
	const { forecastIssuedAt, lastObservedAt, isForecastUsed, forecastTo } = upkeep;
	const forecast = forecastWords({
		forecastAge_h: since_h(forecastIssuedAt, upkeep.forecastAge_h),
		isForecastUsed,
		forecastTo
	});
	const lastObservedAge_h = since_h(lastObservedAt, upkeep.lastObservedAge_h);
	return {
		/** `null` where nothing was. */
		observed: lastObservedAge_h === null ? null : observedWords({ lastObservedAge_h }),
		/** `null` where there is none. */
		forecast,
		attributions: upkeep.attributions.map(({ text }) => text)
	};
}

export type LakeCard = ReturnType<typeof lakeCard>;

/** Another site of the lake, in a few words. */
export interface SiteBeside {
	name: string;
	attention: Attention | null;
	/** `null` where nothing is known of it. */
	totalLower_m: number | null;
	/** Why it is not told; `null` where it is. */
	lacks: 'comingUp' | 'failed' | null;
}

function besideOf({ siteName, name, attention, day }: LakeCard): SiteBeside {
	const totalLower_m = day?.totalLower_m ?? null;
	return { name: siteName ?? name, attention, totalLower_m, lacks: null };
}

/** What needs somebody, then what may, then the rest, each in the order that it had. */
function byWeight(one: SiteBeside, other: SiteBeside): number {
	const rank = ({ attention, lacks }: SiteBeside) =>
		attention !== null ? 0 : lacks !== null ? 1 : 2;
	return rank(one) - rank(other);
}

/** Those that are not told yet: each may need somebody more than one that is. */
function lackingOf(states: readonly DigestState[], sites: readonly SiteChoice[]): SiteBeside[] {
	return states.flatMap(({ kind }, at) =>
		kind === 'known'
			? []
			: [{ name: sites[at]?.name ?? '', attention: null, totalLower_m: null, lacks: kind }]
	);
}

/** A lake that has no card yet, and why. */
export interface WaitingLake {
	id: string;
	name: string;
	isInvented: boolean;
	/** Where the log has why it failed; `null` while it is being worked out. */
	logged: string | null;
}

export interface HomeCards {
	/** The weightiest first. */
	attention: LakeCard[];
	rest: LakeCard[];
	waiting: WaitingLake[];
}

export interface HomeLake {
	id: string;
	name: string;
	isInvented: boolean;
	sites: readonly SiteChoice[];
}

/** The sites that home asks after, in the order in which {@link homeCards} takes what is known of them. */
export function homeSites(lakes: readonly HomeLake[]): DigestOf[] {
	return lakes.flatMap(({ id, sites }) => sites.map((site) => ({ lake: id, site: site.id })));
}

/** Cards in the order in which lakes need somebody, each of the site that needs it most. */
export function homeCards(
	lakes: readonly HomeLake[],
	states: readonly DigestState[],
	now: Date
): HomeCards {
	const waiting: WaitingLake[] = [];
	const cards: LakeCard[] = [];
	let at = 0;
	for (const { id, name, isInvented, sites } of lakes) {
		const ofLake = states.slice(at, (at += sites.length));
		const [first, ...others] = ofLake
			.flatMap((state) => (state.kind === 'known' ? [lakeCard(state.digest, now, sites)] : []))
			.toSorted(bySite);
		const lacking = ofLake.find(({ kind }) => kind !== 'known');
		// A site that is not told may need somebody more than one that needs nobody.
		if (first && (first.attention !== null || !lacking))
			cards.push({
				...first,
				beside: [...others.map(besideOf), ...lackingOf(ofLake, sites)].toSorted(byWeight)
			});
		else if (lacking) {
			const logged = lacking.kind === 'failed' ? lacking.logged : null;
			waiting.push({ id, name, isInvented, logged });
		}
	}
	cards.sort(byAttention);
	return {
		attention: cards.filter(({ attention }) => attention !== null),
		rest: cards.filter(({ attention }) => attention === null),
		waiting
	};
}
