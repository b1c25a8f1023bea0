import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isOver, placeLabels, type Box } from '#lib/ui/places/label-places.ts';

const FRAME = { width: 320, height: 300, size: 13, radius: 6 };

const mark = fc.record({
	x: fc.double({ min: 26, max: 294, noNaN: true }),
	y: fc.double({ min: 26, max: 274, noNaN: true }),
	name: fc.string({ minLength: 1, maxLength: 22 })
});

test('thirty labels on a phone: all there, none over another, over a mark, or off the drawing', () => {
	fc.assert(
		fc.property(fc.array(mark, { minLength: 30, maxLength: 30 }), (places) => {
			const marks = places.map(({ x, y, name }, index) => ({
				x,
				y,
				short: String(index + 1),
				long: `${index + 1} ${name}`
			}));
			const labels = placeLabels(marks, FRAME);
			const boxes = labels.flatMap((label) => label?.box ?? []);
			expect(boxes).toHaveLength(30);
			const dots: Box[] = marks.map(({ x, y }) => ({ x: x - 6, y: y - 6, width: 12, height: 12 }));
			boxes.forEach((box, index) => {
				expect(boxes.slice(index + 1).some((other) => isOver(box, other))).toBe(false);
				expect(dots.some((dot) => isOver(box, dot))).toBe(false);
				expect(Math.min(box.x, box.y)).toBeGreaterThanOrEqual(0);
				expect(box.x + box.width).toBeLessThanOrEqual(FRAME.width);
				expect(box.y + box.height).toBeLessThanOrEqual(FRAME.height);
			});
		})
	);
});

test('a lone place has its name beside it, on the side where there is room', () => {
	const one = (x: number) => placeLabels([{ x, y: 100, short: '1', long: '1 Reeds' }], FRAME)[0];
	expect(one(40)).toMatchObject({ text: '1 Reeds', anchor: 'start', isLed: false });
	expect(one(290)).toMatchObject({ text: '1 Reeds', anchor: 'end' });
});

test('places on one spot keep their numbers, led to from farther out', () => {
	const marks = Array.from({ length: 12 }, (_, index) => ({
		x: 160,
		y: 150,
		short: String(index + 1),
		long: `${index + 1} The very same spot`
	}));
	const labels = placeLabels(marks, FRAME);
	expect(labels.every((label) => label !== null)).toBe(true);
	expect(labels.some((label) => label?.isLed)).toBe(true);
});

test('a label stands beside a line that leaves its mark, and over it where there is no other room', () => {
	const mark = { x: 100, y: 100, short: '1', long: '1 Reeds' };
	const toTheRight = [
		{ x: 100, y: 100 },
		{ x: 190, y: 102 }
	];
	const [label] = placeLabels([mark], { ...FRAME, lines: [toTheRight] });
	expect(label?.anchor).toBe('end');
	const all = [0, 50, 100, 150, 200].flatMap((x) => [
		[
			{ x, y: 0 },
			{ x, y: 200 }
		],
		[
			{ x: 0, y: x },
			{ x: 200, y: x }
		]
	]);
	const between = placeLabels([mark], {
		...FRAME,
		lines: [
			...all,
			[
				{ x: 60, y: 0 },
				{ x: 60, y: 200 }
			],
			[
				{ x: 140, y: 0 },
				{ x: 140, y: 200 }
			]
		]
	});
	expect(between[0]?.text).toBe('1 Reeds');
});
