import { headingUnit } from './header-units.ts';
import { isTemperatureRole, unitsFor, type ColumnRole } from './units.ts';

/** What a heading says of its column. The lower the rank, the surer. */
export interface Heading {
	role: ColumnRole;
	rank: number;
	unit: string | null;
	/** A unit is stated that we don't know. */
	unknownUnit: string | null;
	why: string;
	/** The heading may mean more than one thing, and is left out unless somebody chooses. */
	doubt: string | null;
	/** The heading is "snow" and no more. */
	isSnow: boolean;
}

const OTHER_THINGS =
	/\b(dew ?point|dewp?|dpt|soil|ground temp\w*|water ?temp\w*|lake ?temp\w*|surface ?temp\w*|skin|grass|feels|apparent|chill|heat|wet ?bulb|humid\w*|rh|departure|normal|anomaly|flags?|quality|qc|attributes?|source|gusts?|peak|dir|direction|wdir|degree days?|hdd|cdd|gdd|days|hours|minutes|duration|probability|intensity|type|code|station|elevation|altitude|lat|latitude|lon|longitude|pressure|pres|radiation|cloud\w*|visibility|evap\w*|water level|time of|density|internal|battery|logger|indoor|accum\w*|cumul\w*|running|ytd)\b/;

interface Rule {
	role: ColumnRole;
	rank: number;
	pattern: RegExp;
}

const SNOW_DEPTH =
	/\b(snow ?(depth|height|thickness)|depth of snow|snwd|sndp|snow on (the )?(ground|grnd|land)|schneehohe|snodjup|snodybde|lumen ?syvyys|hauteur de neige|neige au sol)\b/;
const SNOWFALL =
	/\b(snow ?fall( sum)?|fresh snow|new snow|total snow|snow total|neuschnee|nysno|uusi lumi|neige fraiche)\b/;
const SNOW = /^snow$/;
const WATER_EQUIVALENT = /\b(we|swe|lwe|water|water eq\w*|liquid)\b/;
const PRECIPITATION =
	/\b(precip\w*|prcp|pcp|ppt|niederschlag\w*|nederbord\w*|nedbor\w*|sademaara|rr|rsk|tp)\b/;
const RAIN = /\b(rain|rainfall|rain sum|total rain|regen|pluie|regn)\b/;
const WIND =
	/\b(wind ?(speed|spd)?|wspd|wnd|awnd|wdsp|ff|vind\w*|tuulen nopeus|windgeschwindigkeit|vent)\b/;
const TEMPERATURE =
	/\b(temp\w*|t|ta|tair|t2m|2t|tmp[cf]?|air ?temp\w*|air|luft\w*|ilman lampotila|lampotila\w*)\b/;
const MEAN =
	/\b(mean|avg|average|medel\w*|middel\w*|mittel\w*|keskiarvo|moyenne)\b|^t ?(avg|mean|mittel)\b|^t[mg]$|^tmk$/;
const MINIMUM = /\b(min|minimum|low|lowest|alin)\b|^t ?min(imum)?\b|^tmn$|^t?nk?$/;
const MAXIMUM = /\b(max|maximum|high|highest|ylin)\b|^t ?max(imum)?\b|^tmx$|^t?xk?$/;

const RULES: readonly Rule[] = [
	{
		role: 'time',
		rank: 1,
		pattern:
			/^(date ?time|timestamp|time ?stamp|zeitstempel|aikaleima|unix( time)?|epoch( s| ms)?|valid( time)?|date (and )?time)\b/
	},
	{
		role: 'date',
		rank: 1,
		pattern:
			/^(date|day|datum|dato|pvm|paivamaara|mess datum|observation date|obs date|local date)$/
	},
	{ role: 'date', rank: 2, pattern: /\b(date|datum|dato|pvm|yyyymmdd)\b/ },
	{
		role: 'clock',
		rank: 1,
		pattern:
			/^(hour|hr|clock|klo|uhrzeit|zeit|stunde|kl|klockslag|heure|hhmm|local hour|hour of day|aika)\b/
	},
	{
		role: 'time',
		rank: 2,
		pattern: /^(time|tid|observation time|obs time|local time|time local)\b/
	},
	{ role: 'landSnow', rank: 1, pattern: SNOW_DEPTH },
	{ role: 'snowfall', rank: 1, pattern: SNOWFALL },
	{ role: 'precipitation', rank: 1, pattern: PRECIPITATION },
	{ role: 'precipitation', rank: 3, pattern: RAIN },
	{ role: 'wind', rank: 1, pattern: WIND }
];

/** The role and unit of a column by its heading, with the unit of a line below the headings. */
export function headingOf(header: string, unitLine: string): Heading {
	const own = headingUnit(header);
	const unit = (own.unit ?? own.unknown) ? own.unit : knownBelow(unitLine);
	const found = roleOf(own.name, unit);
	const isSnow = SNOW.test(own.name);
	const unknownUnit = own.unknown ?? (unitLine !== '' && !unit ? unitLine : null);
	const role = isSnow ? 'snowfall' : found.role;
	if (!isMeasured(role)) return { ...found, isSnow, unit: null, unknownUnit: null };
	const fitting = unit === null ? null : fittingUnit(role, unit, own.name);
	return { ...found, isSnow, unit: fitting, unknownUnit: unit && !fitting ? unit : unknownUnit };
}

/** Year, month or day where the date stands in three columns, else `null`. */
export function datePart(header: string): 'year' | 'month' | 'day' | null {
	const { name } = headingUnit(header);
	if (/^(year|yr|yyyy|vuosi|jahr|ar|annee)$/.test(name)) return 'year';
	if (/^(month|mon|mo|mm|kk|kuukausi|monat|manad|maned|mois)$/.test(name)) return 'month';
	return /^(day|dd|dy|day of month|pv|paiva|tag|dag|jour)$/.test(name) ? 'day' : null;
}

type Found = Pick<Heading, 'role' | 'rank' | 'why' | 'doubt'>;

function roleOf(name: string, unit: string | null): Found {
	if (OTHER_THINGS.test(name)) return ignored('heading names something else');
	const rule = RULES.find(({ pattern }) => pattern.test(name));
	if (rule?.role === 'wind' && MAXIMUM.test(name)) return ignored('the largest wind, not the mean');
	if (rule?.role === 'landSnow' && WATER_EQUIVALENT.test(name)) {
		return ignored('the water in the snow on land, not its depth');
	}
	if (rule?.role === 'snowfall' || rule?.role === 'landSnow')
		return byHeading(rule.role, rule.rank);
	if (SNOW.test(name)) {
		return ignored('heading can mean snowfall or snow depth', 'can mean snowfall or snow depth');
	}
	if (rule) return byHeading(rule.role, rule.rank);
	return temperatureOf(name, unit);
}

function temperatureOf(name: string, unit: string | null): Found {
	const hasUnit = unit !== null && unitsFor('air').includes(unit);
	const isTemperature =
		hasUnit ||
		TEMPERATURE.test(name) ||
		/^t ?(min|max|avg|mean|mittel|m|g|mk|n|x|nk|xk|mn|mx)/.test(name);
	if (!isTemperature) return ignored('heading is not known');
	if (MINIMUM.test(name)) return byHeading('min', 1);
	if (MAXIMUM.test(name)) return byHeading('max', 1);
	if (MEAN.test(name)) return byHeading('air', 1);
	return TEMPERATURE.test(name) ? byHeading('air', 2) : ignored('heading is not known');
}

function fittingUnit(role: ColumnRole, unit: string, name: string): string | null {
	const water = role === 'snowfall' && WATER_EQUIVALENT.test(name) ? `${unit} water` : unit;
	return unitsFor(role).includes(water) ? water : null;
}

function knownBelow(unitLine: string): string | null {
	return headingUnit(`x (${unitLine})`).unit;
}

function isMeasured(role: ColumnRole): boolean {
	return (
		isTemperatureRole(role) || ['precipitation', 'snowfall', 'landSnow', 'wind'].includes(role)
	);
}

function byHeading(role: ColumnRole, rank: number): Found {
	return { role, rank, why: 'by its heading', doubt: null };
}

function ignored(why: string, doubt: string | null = null): Found {
	return { role: 'ignore', rank: 9, why, doubt };
}
