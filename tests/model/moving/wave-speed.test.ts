import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shallowWave_m_s, stiffness_Nm } from '#lib/model/ice-plate.ts';
import { waveSpeed_m_s } from '#lib/model/moving/wave-speed.ts';

const depth = fc.double({ min: 0.1, max: 200, noNaN: true });
const ice = fc.double({ min: 0.02, max: 2, noNaN: true });

test('deeper water and thicker ice never slow the wave, and none outruns that of shallow water', () => {
	fc.assert(
		fc.property(depth, ice, (depth_m, h_m) => {
			const here_m_s = waveSpeed_m_s(depth_m, h_m);
			expect(here_m_s).toBeLessThanOrEqual(shallowWave_m_s(depth_m));
			expect(waveSpeed_m_s(1.1 * depth_m, h_m)).toBeGreaterThanOrEqual(here_m_s - 1e-9);
			expect(waveSpeed_m_s(depth_m, 1.1 * h_m)).toBeGreaterThanOrEqual(here_m_s - 1e-9);
		})
	);
});

test('no wave number of a fine search does better', () => {
	fc.assert(
		fc.property(depth, ice, (depth_m, h_m) => {
			const ends = [Math.log(2e-3), Math.log(20)] as const;
			const all = Array.from({ length: 2000 }, (_, index) => {
				const k = Math.exp(ends[0] + (index / 2000) * (ends[1] - ends[0]));
				const restoring = 9.81 / k + (stiffness_Nm(h_m) * k ** 3) / 1000;
				return Math.sqrt(restoring * Math.tanh(k * depth_m));
			});
			expect(waveSpeed_m_s(depth_m, h_m)).toBeLessThanOrEqual(Math.min(...all) + 1e-9);
		}),
		{ numRuns: 30 }
	);
});

test('without water there is no wave, and without ice that of open water is bounded by the shallow one', () => {
	expect(waveSpeed_m_s(0, 0.3)).toBe(0);
	expect(waveSpeed_m_s(4, 0)).toBeLessThanOrEqual(shallowWave_m_s(4));
});
