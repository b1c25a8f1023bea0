import { CLEAR_ICE_W_mK, FUSION_J_kg, WATER_kg_m3, CLEAR_ICE_kg_m3 } from '#lib/model/constants.ts';
import { DOUBLING_h, WITHHOLDING_h } from '#lib/model/warmth.ts';

/** One part of how the number is made. */
export interface Step {
	title: string;
	words: string;
	equation: string | null;
	/** Author and year, with the tag that says how far it is confirmed. */
	source: string;
}

/** In the order in which a day is calculated. */
export const STEPS: readonly Step[] = [
	{
		title: 'Frost and thaw are added up',
		words:
			'From the day of freeze-up on, each day below 0 °C adds its degrees to the frost, each day above to the thaw. Hourly records are used as they are; a daily record is split by the sine between its lowest and highest temperature. A day without a temperature adds nothing and widens the doubt.',
		equation: 'frost = Σ max(0, 0 °C − air)\nthaw = Σ max(0, air − 0 °C)',
		source: 'Common US practice [R2]; the sine: Baskerville and Emin 1969 [M-hi]'
	},
	{
		title: 'Snow lies on it',
		words:
			'What falls in the cold falls as snow. The wind takes a part of it off the lake, the rest settles, and it keeps the cold out by its density: ten centimetres can cut growth to a ninth. Snow on a lake is denser and conducts about twice what snow on land does. Where nobody reported what fell, the usual snow of the place and date stands in. It is never taken as none.',
		equation:
			'k = 0.138 − 1.01 ρ + 3.233 ρ²   (W/m K, ρ in g/cm³)\ntimes a lake factor fitted on measured winters',
		source:
			'Sturm and others 1997 [T]; Sturm and Liston 2003 [R, abstract]; settling: Verseghy 1991 [M-med]'
	},
	{
		title: 'Ice grows at its lower face',
		words:
			'The heat that leaves through the snow, the white ice, the clear ice and the film of air above freezes water to the lower face. Heat from the water is taken off. The film and the share of snow that stays depend on how large and how sheltered the lake is. In the dark of winter the surface also loses heat to the sky, less so in air close to zero, and in spring it takes up sun, as if the air were a little colder or warmer. Deep snow lies unevenly: under a part of the lake’s snow no more is counted than goes with the ice.',
		equation: `growth = ( (min(1, frost in °C) loss to the sky/H − air) / (snow/k + white/k + clear/k + 1/H) − heat of the water ) / (ρ L)\nk of clear ice ${CLEAR_ICE_W_mK} W/m K, ρ ${CLEAR_ICE_kg_m3} kg/m³, L ${FUSION_J_kg / 1000} kJ/kg`,
		source: 'Ashton, Ice in lakes and rivers [R]; Ashton 1989 [M-hi]'
	},
	{
		title: 'Heavy snow floods it',
		words:
			'Snow heavier than the ice can float presses the sheet under water. Water comes up, the lowest snow turns to slush, and the slush freezes from its top as white ice. While there is slush, the frost goes into it first and the lower face stands still. Rain and meltwater soak the snow and freeze as white ice too.',
		equation: `floods when  snow × ρ snow > clear × (${WATER_kg_m3} − ${CLEAR_ICE_kg_m3}) + white × (${WATER_kg_m3} − ρ white)`,
		source: 'Archimedes; Leppäranta 1983, Saloranta 2000 [M-hi]'
	},
	{
		title: 'Thaw takes strength first, then thickness',
		words:
			'Thaw and sun melt the snow, then slush, white and clear ice. Sun on bare or thinly covered ice also melts it from inside, even in frost: the ice keeps its thickness and loses its strength. Half of the strength is gone when about a twentieth of the ice has turned to water.',
		equation: 'strength left = (1 − √(liquid share / 0.6))²',
		source:
			'Ashton, Ice in lakes and rivers [R]; Bulatov 1970 [M-med]; melt by degree-days: Bilello 1980 [R, abstract]'
	},
	{
		title: 'A drilled hole moves it',
		words:
			'A reading pulls the estimate towards what was measured, as far as the doubt of each allows: more holes pull more, and one that is far off pulls little and is pointed out. “Did not go through” can only raise it; “went through” is a fact about its place and doesn’t move the rest. What somebody else told pulls less and raises no lower bound. A wet or candled core puts water into the ice, which then grows slower and melts sooner. Readings of past winters are where the next one starts.',
		equation: null,
		source: 'Our choice'
	},
	{
		title: 'The doubt around it',
		words:
			'Many winters of the site are run side by side, each with its own air, snow, melt and day of freeze-up within what is known of such lakes, and each drilled at a spot of its own. The band and every chance shown are counted among them. The lower bound is what one hole in ten falls short of; for vehicles, which cross many spots, the thinnest of five is taken. A thicker reading raises the bound only in part, and one hole alone does not raise it; a thinner one lowers it at once.',
		equation: 'lower bound = tenth percentile of the holes drilled',
		source:
			'Ensemble Kalman filter [M-hi]; spreads from published ranges and measured winters, not published themselves'
	},
	{
		title: 'White ice counts half, slush nothing',
		words:
			'The charts mean new, clear, hard ice. So a centimetre of white ice counts as half a centimetre, and slush counts as nothing. This is what the loads are held against.',
		equation: 'counts as = clear + ½ white',
		source: 'TM 5-852-1 [R]; Canadian Red Cross, Minnesota DNR, Finnish regional authority [R2]'
	},
	{
		title: 'What a load asks for',
		words:
			'The larger of two: the thickness in the published charts, and what its mass asks for by Gold’s formula at its most careful value, the lowest at which failures were reported. A wet crack halves the load it takes, two that cross quarter it, sudden cold on thinly covered ice halves it. A current adds 15 % to the thickness. More than two hours in one place double it.',
		equation: 'thickness in cm = √( mass in kg / 3.5 )',
		source:
			'Gold 1971 [R, abstract]; parked: Smith 2004 [R]; current [R2]; cracks [M-hi]; cold snap [M-med]'
	},
	{
		title: 'What counts together',
		words:
			'Ice spreads a load over several metres. So a trailer counts with what draws it, and loads that go together count as one, unless they are kept apart by 100 times the thickness that one of them asks for; parked, by 15 m at least. A published minimum is for one vehicle: what comes on top is added to it as the formula adds loads.',
		equation: 'thickness = √( chart² + added mass in kg / 3.5 )',
		source:
			'About 100 thicknesses [M-med]; TM 5-852-1 has 53 to 97 [C]; 15 m: Minnesota DNR [R2]; adding up is our choice'
	},
	{
		title: 'What stands must stay above the water',
		words:
			'Under a load the ice gives at once, and then goes on giving: three times as far after two hours, ten times after a day. Once its top is under water, water comes up through every crack and hole, and the load is not carried however thick the ice. So what stands asks at least for ice that floats high enough, with the snow of the day on it, for as long as it stands.',
		equation: 'freeboard ≥ mass / (8 ρ water · ℓ²) · √( 1 + hours / ¼ )',
		source:
			'Floating plate: Squire and others 1996 [M-hi]; that it goes on: Frederking and Gold 1976 [M-med]; its speed is our choice'
	},
	{
		title: 'Under the wave',
		words:
			'A vehicle drives a wave in the water before it, which is slowest over shallow water and under thin ice. The page of going on tells its speed by the depth, and half of it as the speed to stay under.',
		equation: 'c = least over all waves k of √( (g/k + D k³/ρ water) · tanh(k · depth) )',
		source:
			'Squire and others 1996 [M-hi]; 25 km/h loaded, 10 km/h entering or leaving: worksite practice [R2]; half is our choice'
	},
	{
		title: 'Sites and tracks',
		words:
			'A site is a part of the lake with ice of its own. A track is the ice of the site that it was made on until its first work; from then on its own events and holes alone go on, and holes beside it support no load on it. Clearing takes snow away, packing makes it dense, and both let more frost through. Water pumped on soaks the snow first; what finds none stands over the ice and freezes from the top as white ice, as slowly as water does. A bank has to be spread so wide that it weighs no more than the ice around it still floats.',
		equation:
			'frost to freeze water z deep = ρ water · L · ( z²/(2 k) + z/H );  bank width = bank mass / ( buoyancy − snow )',
		source:
			'Layered conduction and Archimedes [C]; what a track takes from its parent is our choice; banks: common practice, no source'
	},
	{
		title: 'Warm spells come before everything',
		words: `${DOUBLING_h} hours above freezing within a day double what is asked for. ${WITHHOLDING_h} hours above freezing, or a daily mean above it, withhold every load. That ends after three days of frost with at least 15 °C·d and a new hole; once sun has been on bare ice, only after a core that was found sound.`,
		equation: null,
		source: 'Minnesota DNR 2013 [R2]; TM 5-852-1 [R]; the way back is our choice'
	},
	{
		title: 'When a chart minimum counts as reached',
		words:
			'Only when holes that you have seen say so: three or more on foot, five or more along the way for vehicles, and the bound carried forward from them still clears what is asked. That lasts seven days at most, or twenty-one where it clears it one and a half times and nothing has flooded or thawed. At a landing or a crack it lasts one day, at a ridge it never holds. Otherwise it is “expected, not drilled”.',
		equation: null,
		source: 'Our choice; no published rule was found'
	}
];
