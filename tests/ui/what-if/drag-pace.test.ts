import { expect, test } from 'vitest';
import { DragPace } from '#lib/ui/what-if/drag-pace.ts';

function membersAfter(...took_ms: number[]): number {
	const pace = new DragPace();
	for (const each of took_ms) pace.took(each);
	return pace.members;
}

test('a device that answers within a frame keeps a hundred members', () => {
	expect(membersAfter()).toBe(100);
	expect(membersAfter(400, 90, 80, 70, 60, 35, 90, 45)).toBe(100);
});

test('one that lags goes on with fewer, and stays at them', () => {
	const slow = [400, 90, 80, 70, 80, 90, 75, 60];
	expect(membersAfter(...slow)).toBe(50);
	expect(membersAfter(...slow, 20, 20, 20)).toBe(50);
});
