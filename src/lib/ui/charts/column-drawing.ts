import { depth, requirement, thickness } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { rulerTicks } from './ruler.ts';
import { spread } from './spread.ts';
import { grouped, markText, type LoadGroup, type LoadMark } from './thresholds.ts';

/** Of a mark's names: what stands beside the ruler ends with the drawing. */
const MARK_LETTERS = 20;

export interface ColumnInput {
	snow_m: number;
	slush_m: number;
	white_m: number;
	clear_m: number;
	totalLower_m: number | null;
	/** What the ice counts as at its lower bound, and for whom. */
	counts: readonly { who: string; at_m: number | null }[];
	loads: readonly LoadMark[];
	units: Units;
}

export interface DrawnLayer {
	kind: 'snow' | 'slush' | 'white' | 'clear';
	y: number;
	height: number;
	name: string;
	/** Whether it is tall enough to hold its name. */
	holdsName: boolean;
}

export interface DrawnLabel {
	kind: 'layer' | 'mark' | 'counts';
	/** What it points at, and where it stands. */
	y: number;
	textY: number;
	text: string;
}

export interface ColumnDrawing {
	height: number;
	/** Top of the ice, where the ruler begins, and where it ends. */
	zero: number;
	foot: number;
	layers: DrawnLayer[];
	ticks: { y: number; text: string | null }[];
	/** To the right of the ruler. */
	labels: DrawnLabel[];
	/** Between these the lower face of the ice may lie. */
	doubt: { from: number; to: number } | null;
	/** Loads that ask for more than the ruler shows. */
	beyond: string[];
}

const LABEL = 19;
const TOP = 14;
const BODY = 380;
const SHORTEST_RULER_m = 0.2;
/** Less than this reads as none. */
const HARDLY_ANY_m = 0.005;

/** The ice column to scale, in the units of an SVG 320 wide. */
export function columnDrawing(input: ColumnInput): ColumnDrawing {
	const { units } = input;
	const above_m = input.snow_m + input.slush_m;
	const marks = grouped(input.loads, units);
	const ruler_m = rulerLength_m(input.white_m + input.clear_m, marks);
	const perMetre = BODY / (above_m + ruler_m);
	const zero = TOP + above_m * perMetre;
	const down = (metres: number) => zero + metres * perMetre;
	const layers = stack(input, perMetre);
	const shown = marks.filter(({ required_m }) => required_m <= ruler_m);
	const wanted = [
		...layers.filter(({ holdsName }) => !holdsName).map(layerLabel),
		...shown.map((mark) => markLabel(mark, down, units)),
		...countsLabels(input, down)
	];
	const foot = Math.max(down(ruler_m), TOP + wanted.length * LABEL);
	const placed = spread(
		wanted.map(({ y }) => y),
		LABEL,
		TOP,
		foot
	);
	return {
		height: foot + TOP,
		zero,
		foot: down(ruler_m),
		layers,
		ticks: rulerTicks(ruler_m, units).map(({ at_m, text }) => ({ y: down(at_m), text })),
		labels: wanted.map((label, index) => ({ ...label, textY: placed[index] ?? label.y })),
		doubt: doubt(input, down),
		beyond: marks
			.filter((mark) => !shown.includes(mark))
			.map(({ names, required_m }) => `${requirement(required_m, units)} ${[...names].join(', ')}`)
	};
}

/** As far as the ice goes and the next load that it doesn't carry yet. */
function rulerLength_m(total_m: number, marks: readonly LoadGroup[]): number {
	const next_m = marks.find(({ required_m }) => required_m > total_m)?.required_m ?? 0;
	return Math.max(SHORTEST_RULER_m, total_m * 1.12, next_m * 1.08);
}

function stack(input: ColumnInput, perMetre: number): DrawnLayer[] {
	const { snow_m, slush_m, white_m, clear_m, units } = input;
	let y = TOP;
	const layer = (kind: DrawnLayer['kind'], thickness_m: number, says: string): DrawnLayer[] => {
		if (thickness_m < HARDLY_ANY_m) return [];
		const height = thickness_m * perMetre;
		y += height;
		return [{ kind, y: y - height, height, name: `${kind} ${says}`, holdsName: height >= LABEL }];
	};
	return [
		...layer('snow', snow_m, depth(snow_m, units)),
		...layer('slush', slush_m, depth(slush_m, units)),
		...layer('white', white_m, thickness(white_m, units)),
		...layer('clear', clear_m, thickness(clear_m, units))
	];
}

function layerLabel({ y, height, name }: DrawnLayer) {
	return { kind: 'layer' as const, y: y + height / 2, text: name };
}

function markLabel(mark: LoadGroup, down: (metres: number) => number, units: Units) {
	return {
		kind: 'mark' as const,
		y: down(mark.required_m),
		text: markText(mark, units, MARK_LETTERS)
	};
}

function countsLabels({ counts, units }: ColumnInput, down: (metres: number) => number) {
	return counts.flatMap(({ who, at_m }) => {
		if (at_m === null || at_m < 2 * HARDLY_ANY_m) return [];
		const text = `counts as ${thickness(at_m, units)} ${who}`;
		return [{ kind: 'counts' as const, y: down(at_m), text }];
	});
}

function doubt({ totalLower_m, white_m, clear_m }: ColumnInput, down: (metres: number) => number) {
	const total_m = white_m + clear_m;
	if (totalLower_m === null || total_m <= 0 || totalLower_m >= total_m) return null;
	return { from: down(Math.max(0, totalLower_m)), to: down(total_m) };
}
