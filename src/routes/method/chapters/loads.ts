import { ENGINEER_ABOVE_kg } from '#lib/model/load-case.ts';
import { LOADED_m_s } from '#lib/model/moving/pace.ts';
import { MOVE_AFTER_h } from '#lib/model/parked/rules.ts';
import { PARKED_APART_m } from '#lib/model/moving/spacing.ts';
import type { Chapter } from '../step.ts';

export const LOADS: Chapter = {
	id: 'loads',
	title: 'What loads ask for',
	steps: [
		{
			title: 'White ice counts half, slush nothing',
			words:
				'The charts mean new, clear, hard ice. So a centimetre of white ice counts as half a centimetre, and slush counts as nothing. This is what the loads are held against.',
			equations: ['counts as = h_{clear} + ½ h_{white}'],
			source: 'TM 5-852-1 [R]; Canadian Red Cross, Minnesota DNR, Finnish regional authority [R2]'
		},
		{
			title: 'What a load asks for',
			words: `The largest of three: the thickness in the published charts, what its mass asks for by Gold’s formula at its most careful value, the lowest at which failures were reported, and for what stands the ice that keeps its top above the water, as told below. No load asks for less than a machine that weighs no more. A wet crack halves the load it takes, two that cross quarter it, sudden cold halves it. A current adds 15 % to the thickness. More than two hours in one place double it. Above ${ENGINEER_ABOVE_kg / 1000} tonnes at one place, and for a vehicle parked with its shelter, nothing is stated: ask an ice engineer.`,
			equations: [
				'h = max(max(h_{chart}, √(P / (A · load factors))) · standing factor, h_{mass}, h_{afloat}) · thickness factors'
			],
			where: [
				['P', 'mass, kg'],
				['A', '3.5 kg/cm²; h in cm'],
				[
					'h_{mass}',
					'chart for the heaviest machine that weighs no more; from 400, 500, 1300, 2500, 4500 kg'
				],
				['h_{afloat}', 'for what stands: whose top stays above the water'],
				['standing factor', '2 after two hours in one place'],
				['thickness factors', '1.15 over a current, 2 in a warm spell']
			],
			source:
				'Gold 1971 [R, abstract]; parked: Smith 2004 [R]; current [R2]; cracks [M-hi]; cold snap [M-med]; by mass: our choice'
		},
		{
			title: 'What counts together',
			words: `Ice spreads a load over several metres. So a trailer counts with what draws it, and loads that go together count as one, unless they are kept apart by 100 times the thickness that one of them asks for; parked, by ${PARKED_APART_m} m at least. A published minimum is for one vehicle: what comes on top is added to it as the formula adds loads.`,
			equations: ['h = √(h_{chart}^{2} + added mass / A)'],
			source:
				'About 100 thicknesses [M-med]; TM 5-852-1 has 53 to 97 [C]; 15 m: Minnesota DNR [R2]; adding up is our choice'
		},
		{
			title: 'What stands must stay above the water',
			words: `Under a load the ice gives at once, and then goes on giving: three times as far after two hours, ten times after a day. Once its top is under water, water comes up through every crack and hole, and the load is not carried however thick the ice. So what stands asks at least for ice that floats high enough, with the snow of the day on it, for as long as it stands. Vehicles are moved every ${MOVE_AFTER_h} hours; water in a hole beside one means that it is sinking.`,
			equations: [
				'freeboard ≥ P / (8 ρ_{water} ℓ^{2}) · √(1 + hours/¼)',
				'ℓ = (E h^{3} / (12 (1 − ν^{2}) ρ_{water} g))^{¼}'
			],
			where: [
				['ℓ', 'how far the sheet spreads a load: 6 m at 30 cm'],
				['E, ν', '6 GPa, 0.33']
			],
			source:
				'Floating plate: Squire and others 1996 [M-hi]; that it goes on: Frederking and Gold 1976 [M-med]; its speed is our choice; moving every two hours: Minnesota DNR [R2]'
		},
		{
			title: 'Under the wave',
			words: `A vehicle drives a wave in the water before it, which is slowest over shallow water and under thin ice. The page of going on tells its speed by the depth, for the lower bound at the thinnest of five spots with white ice counted half, and half of it, ${Math.round(LOADED_m_s * 3.6)} km/h at most, as the speed to stay under. Near a shore a walk’s pace, and at an angle to it, as the wave is thrown back.`,
			equations: [
				'c = least over all κ of √((g/κ + D κ^{3}/ρ_{water}) tanh(κ d))',
				'over shallow water  c = √(g d)'
			],
			where: [
				['κ', 'wave number'],
				['d', 'depth of the water, m'],
				['D', 'stiffness of the sheet, E h^{3} / (12 (1 − ν^{2}))']
			],
			source:
				'Squire and others 1996 [M-hi]; 25 km/h loaded, 10 km/h entering or leaving: worksite practice [R2]; half of it, and the ice that it is told for, are our choice'
		}
	]
};
