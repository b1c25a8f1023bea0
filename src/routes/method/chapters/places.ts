import {
	FLOW_SPACING_m,
	OPEN_SPACING_m,
	SHORE_REACH_m,
	SHORE_SPACING_m
} from '#lib/model/places/hole-plan.ts';
import { STRONG_WIND_m_s } from '#lib/model/places/look-again.ts';
import type { Chapter } from '../step.ts';
import { GUESS } from './words.ts';

export const PLACES: Chapter = {
	id: 'places',
	title: 'Weak spots, routes and tracks',
	steps: [
		{
			title: 'A weak spot has its own ice',
			words:
				'The estimate does not hold at a current, an inlet, a narrows, a spring, a bog, a ridge, a dock, a landing, rocks, a crack or a drift, nor where the ice broke. Such a place has what its own holes showed and nothing else: they are never carried up with the site, what the site has lost since is taken off, and a thaw ends them.',
			source:
				'Hazards: Ashton [R], New Hampshire Fish and Game [R], National Weather Service Bismarck [R], Minnesota and Wisconsin DNR [R2]; the rest is our choice'
		},
		{
			title: 'How long a check of one lasts',
			words:
				'Holes count for a day where water or air moves under the ice, at a landing and at a crack; for seven days at a bog, rocks or a drift; never at a ridge, which wind and temperature move within hours, nor where the ice broke. Late in the winter a landing gets worse from day to day, and each kind says so.',
			source:
				'That a ridge changes within hours [M-hi], never to cross one: Minnesota and Wisconsin DNR [R2]; on each visit: Saskatchewan Water Security Agency 2022 [R]; the days are our choice'
		},
		{
			title: 'Reasons to look again',
			words: `A day’s mean wind of ${STRONG_WIND_m_s} m/s or more since the last check moves cracks, ridges and drifts. On a river or a reservoir the level may have changed, which cannot be seen from here.`,
			source:
				'Wind: Swedish Meteorological and Hydrological Institute [R], Wisconsin DNR [R2]; level: National Weather Service Bismarck [R]; the speed is our choice'
		},
		{
			title: 'A route carries what its weakest point does',
			words:
				'A plain point has the site’s lower bound for vehicles, or less where its own holes say so; a weak spot has its own holes. The least in proportion to what is asked there decides, never the average. One point of which nothing is known leaves the whole way not known.',
			equations: ['route = min over its points of (what is known there / what is asked there)'],
			source: GUESS
		},
		{
			title: 'Where to drill along it',
			words: `At each of its points; every ${SHORE_SPACING_m} m for the first ${SHORE_REACH_m} m from a shore; no more than ${FLOW_SPACING_m} m apart near moving water and on rivers; no more than ${OPEN_SPACING_m} m elsewhere; three holes at least on foot, five for vehicles.`,
			source:
				'County of Barrhead: 30 m on lakes, 15 m on rivers [R2]; Minnesota DNR 150 ft, another agency 10 to 20 ft [R2]; the tightest that is practical, derived; holes at least are our choice'
		},
		{
			title: 'Sites and tracks',
			words:
				'A site is a part of the lake with ice of its own. A track is the ice of the site that it was made on until its first work; from then on its own events and holes alone go on, and holes beside it support no load on it. Clearing takes snow away, packing makes it dense, and both let more frost through. Water pumped on soaks the snow first; what finds none stands over the ice and freezes from the top as white ice, as slowly as water does. A plan clears each winter that is run by its own snow, and is stored nowhere.',
			equations: ['frost to freeze water z deep: FDD = ρ_{water} L (z^{2}/(2 k) + z/H) / 86 400 s'],
			source: 'Layered conduction [C]; what a track takes from its parent is our choice'
		},
		{
			title: 'Banks',
			words:
				'Snow that is cleared weighs on the ice beside the track. A bank has to be spread so wide that it weighs no more than the ice around it still floats.',
			equations: ['width of a bank = its mass / (what the ice floats − the snow on it)'],
			source: 'Archimedes [C]; that banks crack the ice beside a track: common practice, no source'
		}
	]
};
