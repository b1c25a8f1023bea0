import { XMLParser } from 'fast-xml-parser';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
	LARGEST_GPX_BYTES,
	MOST_GPX_POINTS,
	parseGpx
} from '../../../../src/lib/server/services/places/gpx/parse-gpx.ts';
import { writeGpx } from '../../../../src/lib/server/services/places/gpx/write-gpx.ts';
import { plain, route, spotPoint, weakSpot } from '../../../support/invented-route.ts';

const gpx = (inner: string, attributes = 'version="1.1"') =>
	`<?xml version="1.0"?><gpx ${attributes} creator="tests" xmlns="http://www.topografix.com/GPX/1/1">${inner}</gpx>`;
const parse = (text: string) => parseGpx(new TextEncoder().encode(text));
const fileOf = (text: string) => {
	const parsed = parse(text);
	if (parsed.status !== 'read') throw new Error(parsed.reason);
	return parsed.file;
};
const reasonOf = (text: string) => {
	const parsed = parse(text);
	return parsed.status === 'refused' ? parsed.reason : 'read';
};

test('waypoints, routes and tracks are told apart', () => {
	const file = fileOf(
		gpx(`<metadata><name>Tests</name></metadata>
		<wpt lat="47.4" lon="-38.2"><name>Mouth</name><desc>open &amp; black</desc><type>inletOutlet</type></wpt>
		<rte><name>Across</name><rtept lat="47.41" lon="-38.2"/><rtept lat="47.42" lon="-38.2"><name>Far</name></rtept></rte>
		<trk><trkseg><trkpt lat="1" lon="1"/></trkseg></trk>`)
	);
	expect(file).toEqual({
		name: 'Tests',
		waypoints: [
			{
				name: 'Mouth',
				remark: 'open & black',
				type: 'inletOutlet',
				latitude: 47.4,
				longitude: -38.2
			}
		],
		routes: [
			{
				name: 'Across',
				points: [
					{ name: null, remark: null, type: null, latitude: 47.41, longitude: -38.2 },
					{ name: 'Far', remark: null, type: null, latitude: 47.42, longitude: -38.2 }
				]
			}
		],
		tracks: 1
	});
});

test.each([
	['a document type', `<!DOCTYPE gpx [<!ENTITY a "b">]>${gpx('')}`, 'document type'],
	['a document type in small letters', `<!doctype gpx>${gpx('')}`, 'document type'],
	[
		'an entity that fetches',
		`<!DOCTYPE g [<!ENTITY x SYSTEM "file:///etc/passwd">]>${gpx('<wpt lat="1" lon="1"><name>&x;</name></wpt>')}`,
		'document type'
	],
	['something else', '<html><body/></html>', 'no <gpx> element'],
	['plain text', 'lat,lon\n1,2', 'not well-formed'],
	['nothing', '', 'empty'],
	['a nest', gpx('<a>'.repeat(200) + '</a>'.repeat(200)), 'cannot be read as GPX'],
	['half a file', '<gpx version="1.1"><wpt lat="1" lon="1">', 'not well-formed'],
	['another version', gpx('', 'version="2.0"'), 'not GPX 1.0 or 1.1'],
	['a waypoint without longitude', gpx('<wpt lat="1"/>'), 'wpt 1 has no lon'],
	[
		'a latitude past the pole',
		gpx('<wpt lat="1" lon="1"/><wpt lat="91" lon="1"/>'),
		'wpt 2 has a lat outside -90 to 90'
	],
	[
		'a latitude that is a word',
		gpx('<wpt lat="NaN" lon="1"/>'),
		'wpt 1 has a lat that is not a decimal'
	],
	[
		'a route point without a place',
		gpx('<rte><rtept lat="1" lon="1"/><rtept/></rte>'),
		'rte 1 rtept 2 has no position'
	],
	[
		'too many points',
		gpx('<wpt lat="1" lon="1"/>'.repeat(MOST_GPX_POINTS + 1)),
		`${MOST_GPX_POINTS + 1} points`
	]
])('%s is refused with its reason', (_, text, reason) => {
	expect(reasonOf(text)).toContain(reason);
});

test('a file that is too large or no text is refused unread', () => {
	expect(parseGpx(new Uint8Array(LARGEST_GPX_BYTES + 1))).toMatchObject({ status: 'refused' });
	expect(parseGpx(Uint8Array.of(0x3c, 0xff, 0xfe, 0x80))).toMatchObject({ status: 'refused' });
});

test('UTF-16 is read, and names become one plain line', () => {
	const text = `\ufeff${gpx('<wpt lat="1" lon="1"><name> Två\n\u202eöar\u0085 </name></wpt>')}`;
	const little = new Uint8Array(Uint16Array.from(text, (mark) => mark.charCodeAt(0)).buffer);
	const parsed = parseGpx(little);
	expect(parsed.status === 'read' && parsed.file.waypoints[0]?.name).toBe('Två öar');
});

test('markup in a name is its text and stays text', () => {
	const name = fileOf(
		gpx('<wpt lat="1" lon="1"><name><![CDATA[<script>alert(1)</script>]]></name></wpt>')
	).waypoints[0]?.name;
	expect(name).toBe('<script>alert(1)</script>');
	const out = writeGpx(name ?? '', [weakSpot('rocks', { name: name ?? '', position: HERE })], []);
	expect(out).not.toContain('<script');
	expect(fileOf(out).waypoints[0]?.name).toBe(name);
});

const HERE = { latitude: 47.4, longitude: -38.2 };

test('a file of nothing but the element has nothing in it', () => {
	expect(fileOf('<gpx version="1.1"/>')).toEqual({
		name: null,
		waypoints: [],
		routes: [],
		tracks: 0
	});
});

test('whatever bytes come, it reads or refuses', () => {
	fc.assert(
		fc.property(fc.string({ unit: 'grapheme' }), (noise) => {
			for (const text of [noise, gpx(noise), gpx(`<wpt lat="1" lon="1">${noise}</wpt>`)])
				expect(['read', 'refused']).toContain(parse(text).status);
		})
	);
});

const aName = fc.string({ unit: 'binary', minLength: 1, maxLength: 60 });

test('what is written is well-formed and comes back, whatever it is called', () => {
	fc.assert(
		fc.property(aName, aName, (spotName, routeName) => {
			const spot = weakSpot('spring', { name: spotName, position: HERE, remark: routeName });
			const points = [
				{ ...plain('Start'), position: HERE },
				spotPoint('spring', null, { name: spotName, position: HERE })
			];
			const out = writeGpx(routeName, [spot], [route(points, { name: routeName })]);
			const file = fileOf(out);
			expect(file.waypoints).toHaveLength(1);
			expect(file.routes[0]?.points).toHaveLength(2);
			expect(file.waypoints[0]?.type).toBe('spring');
			const tree = new XMLParser({ parseTagValue: false }).parse(out);
			expect(Object.keys(tree.gpx).toSorted()).toEqual(['metadata', 'rte', 'wpt']);
		})
	);
});

test('a place without a position and a route that leads over it are left out', () => {
	const out = writeGpx(
		'Tests',
		[weakSpot('spring')],
		[route([{ ...plain('Start'), position: HERE }, spotPoint('spring')])]
	);
	expect(fileOf(out)).toMatchObject({ waypoints: [], routes: [] });
});
