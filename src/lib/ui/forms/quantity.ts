import { INCH_m, POUND_kg } from '#lib/model/units.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** What a number field measures. Its field is named with the unit it is typed in: `total_cm`. */
export type Quantity = 'length' | 'height' | 'distance' | 'area' | 'mass' | 'hours' | 'density';

export interface FieldUnit {
	/** What follows the underscore in the field's name. */
	suffix: string;
	/** What the label says. */
	label: string;
	/** One of these in the unit that is stored. */
	inSi: number;
}

const CM: FieldUnit = { suffix: 'cm', label: 'cm', inSi: 0.01 };
const INCH: FieldUnit = { suffix: 'in', label: 'inches', inSi: INCH_m };
const METRE: FieldUnit = { suffix: 'm', label: 'm', inSi: 1 };
const FOOT: FieldUnit = { suffix: 'ft', label: 'feet', inSi: 12 * INCH_m };
const KM2: FieldUnit = { suffix: 'km2', label: 'km²', inSi: 1 };
/** The international acre, in km². */
const ACRE: FieldUnit = { suffix: 'acre', label: 'acres', inSi: 0.0040468564224 };
const KG: FieldUnit = { suffix: 'kg', label: 'kg', inSi: 1 };
const POUND: FieldUnit = { suffix: 'lb', label: 'lb', inSi: POUND_kg };

const HOUR: FieldUnit = { suffix: 'h', label: 'hours', inSi: 1 };
const KG_M3: FieldUnit = { suffix: 'kg_m3', label: 'kg/m³', inSi: 1 };
/** A cubic foot weighed in pounds. */
const POUND_FT3: FieldUnit = {
	suffix: 'lb_ft3',
	label: 'lb/ft³',
	inSi: POUND_kg / (12 * INCH_m) ** 3
};

const FIELD_UNITS: Record<Quantity, readonly [metric: FieldUnit, imperial: FieldUnit]> = {
	length: [CM, INCH],
	height: [METRE, FOOT],
	distance: [METRE, FOOT],
	area: [KM2, ACRE],
	mass: [KG, POUND],
	hours: [HOUR, HOUR],
	density: [KG_M3, POUND_FT3]
};

/** The unit that this person types a quantity in. */
export function fieldUnit(quantity: Quantity, units: Units): FieldUnit {
	const [metric, imperial] = FIELD_UNITS[quantity];
	const isMetric = quantity === 'mass' ? units.mass === 'kg' : units.measure === 'metric';
	return isMetric ? metric : imperial;
}

/** Both units a form may come back in: somebody may switch units while a form stands open. */
export function fieldUnits(quantity: Quantity): readonly [FieldUnit, FieldUnit] {
	return FIELD_UNITS[quantity];
}

/** What a field's number is counted in, by its name: `mass_kg`; `null` where that names no unit. */
export function unitLabelOf(field: string): string | null {
	const own = Object.values(FIELD_UNITS)
		.flat()
		.filter(({ suffix }) => field.endsWith(`_${suffix}`))
		.toSorted((one, other) => other.suffix.length - one.suffix.length);
	return own[0]?.label ?? null;
}

/** SI from a typed number, without the dust of binary fractions. @example toSi(23, CM) // => 0.23 */
export function toSi(typed: number, unit: FieldUnit): number {
	return Number((typed * unit.inSi).toPrecision(12));
}

/** What stands in a field for a stored value; typed again unchanged it means the same. */
export function fieldText(si: number | null, unit: FieldUnit): string {
	return si === null ? '' : String(Number((si / unit.inSi).toFixed(3)));
}
