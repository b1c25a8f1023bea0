import { CLEAR_ICE_W_mK, FUSION_J_kg, WATER_kg_m3, CLEAR_ICE_kg_m3 } from '#lib/model/constants.ts';
import type { Chapter } from '../step.ts';

export const GROWTH: Chapter = {
	id: 'growth',
	title: 'Growth and flooding',
	steps: [
		{
			title: 'Ice grows at its lower face',
			words:
				'The heat that leaves through the snow, the white ice, the clear ice and the film of air above freezes water to the lower face. Heat from the water is taken off. The film and the share of snow that stays depend on how large and how sheltered the lake is. In the dark of winter the surface also loses heat to the sky, less so in air close to zero, and in spring it takes up sun, as if the air were a little colder or warmer. Deep snow lies unevenly: under a part of the lake’s snow no more is counted than goes with the ice.',
			equations: [
				'q = −T* / (h_{snow}/k_{snow} + h_{white}/k_{white} + h_{clear}/k_{clear} + 1/H)',
				'growth of clear ice = (q − q_{water}) / (ρ_{ice} L)'
			],
			where: [
				['T*', 'air temperature, with what the sky takes and the sun gives, °C'],
				['h, k', 'thickness in m and conductivity in W/m K of each layer'],
				['k_{clear}', `${CLEAR_ICE_W_mK} W/m K`],
				['H', 'film of air, 10 to 30 W/m² K'],
				['q_{water}', 'heat of the water, W/m²'],
				['ρ_{ice}, L', `${CLEAR_ICE_kg_m3} kg/m³, ${FUSION_J_kg / 1000} kJ/kg`]
			],
			source:
				'Layers in series: Ashton, Ice in lakes and rivers [R]; Ashton 1989 [M-hi]; sky and sun: fitted, not a published figure'
		},
		{
			title: 'Heavy snow floods it',
			words:
				'Snow heavier than the ice can float presses the sheet under water. Water comes up, the lowest snow turns to slush, and the slush freezes from its top as white ice. As snow drifts, part of a lake floods while the rest is still afloat. While there is slush, the frost goes into it first and the lower face stands still. Rain and meltwater soak the snow and freeze as white ice too.',
			equations: [
				`floods when  h_{snow} ρ_{snow} > h_{clear} (${WATER_kg_m3} − ${CLEAR_ICE_kg_m3}) + h_{white} (${WATER_kg_m3} − ρ_{white})`,
				'slush = (load − what floats) ρ_{ice} / (ρ_{water} ρ_{snow in it})'
			],
			where: [['ρ_{white}', '880 kg/m³, range 800 to 900']],
			source:
				'Archimedes; Leppäranta 1983, Saloranta 2000 [M-hi]; depth of slush derived [C]; density of white ice [M-med]'
		},
		{
			title: 'Slush freezes from its top',
			words:
				'Only the water in it has to freeze, which takes about six tenths of the frost of new ice, but the snow on top keeps the frost out: 10 cm of slush need two days at −10 °C where they lie bare, and two to three weeks under 10 cm of settled snow.',
			equations: [
				'FDD = ρ_{water} φ L (z^{2}/(2 k_{white}) + z (1/H + h_{snow}/k_{snow})) / 86 400 s'
			],
			where: [
				['z', 'depth of slush, m'],
				['φ', 'share of water in it, about 0.6']
			],
			source: 'The same law of layers, derived [C]'
		}
	]
};
