/**
 * Places for labels that would like to sit at `wanted`, at least `gap` apart, moved as little as
 * that allows and kept from `low` to `high` where they all fit. In the order given.
 */
export function spread(
	wanted: readonly number[],
	gap: number,
	low = -Infinity,
	high = Infinity
): number[] {
	const order = wanted.map((_, index) => index).toSorted((a, b) => at(wanted, a) - at(wanted, b));
	const groups: Group[] = [];
	for (const index of order) {
		let group: Group = { members: [index], centre: at(wanted, index) };
		group.centre = inside(group, gap, low, high);
		for (let last = groups.at(-1); last && overlaps(last, group, gap); last = groups.at(-1)) {
			groups.pop();
			const members = [...last.members, ...group.members];
			group = { members, centre: mean(members.map((member) => at(wanted, member))) };
			group.centre = inside(group, gap, low, high);
		}
		groups.push(group);
	}
	const placed = wanted.map(() => 0);
	for (const { members, centre } of groups) {
		members.forEach((member, rank) => {
			placed[member] = centre + (rank - (members.length - 1) / 2) * gap;
		});
	}
	return placed;
}

/** Labels that touch and so move as one. */
interface Group {
	members: number[];
	centre: number;
}

function overlaps(upper: Group, lower: Group, gap: number): boolean {
	const room = ((upper.members.length + lower.members.length) / 2) * gap;
	return lower.centre - upper.centre < room;
}

function inside({ members, centre }: Group, gap: number, low: number, high: number): number {
	const half = ((members.length - 1) / 2) * gap;
	return Math.max(low + half, Math.min(high - half, centre));
}

function mean(values: number[]): number {
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function at(values: readonly number[], index: number): number {
	return values[index] ?? 0;
}
