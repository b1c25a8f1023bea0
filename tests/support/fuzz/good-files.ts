import { addDays } from '../../../src/lib/model/calendar.ts';
import { winterCsv } from '../winter-csv.ts';

const hours = Array.from({ length: 60 }, (_, at) => {
	const on = addDays('2027-01-01', Math.floor(at / 24));
	return { on, hour: String(at % 24).padStart(2, '0'), air_degC: -8 + 5 * Math.sin(at / 4) };
});

/** Weather as people have it, in the ways that it is written. */
export const CSV_TEXTS: readonly string[] = [
	winterCsv('2027-01-01', 40),
	`time,temperature_c,precip_mm\n${hours.map(({ on, hour, air_degC }) => `${on}T${hour}:00:00Z,${air_degC.toFixed(1)},0.1`).join('\n')}\n`,
	`Datum;Zeit;Temperatur (°C);Niederschlag (mm)\r\n${hours
		.map(
			({ on, hour, air_degC }) =>
				`${on.split('-').toReversed().join('.')};${hour}:00;${air_degC.toFixed(1).replace('.', ',')};0,2`
		)
		.join('\r\n')}`,
	`# Station: Made up\n# Latitude: 47.4\n\ndate\ttmin_f\ttmax_f\tprecip_in\tsnow_depth_in\n${hours
		.slice(0, 30)
		.map((_, at) => `${addDays('2027-01-01', at)}\t${10 - (at % 7)}\t${25 + (at % 5)}\t0.05\t4`)
		.join('\n')}\n`,
	`year,month,day,hour,air temp,wind m/s\n${hours.map(({ hour, air_degC }, at) => `2027,1,${1 + Math.floor(at / 24)},${Number(hour)},${air_degC.toFixed(2)},3`).join('\n')}`
];

const points = ['wpt', 'rtept'].map((element) =>
	[1, 2, 3]
		.map(
			(at) =>
				`<${element} lat="47.${at}" lon="-38.${at}"><ele>3</ele><name>Point ${at} &amp; more</name><desc>thin</desc><type>current</type></${element}>`
		)
		.join('\n')
);
const HEAD =
	'<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">';

export const GPX_TEXTS: readonly string[] = [
	`${HEAD}\n<metadata><name>Places</name></metadata>\n${points[0]}\n</gpx>\n`,
	`${HEAD}\n<rte><name>Across</name>\n${points[1]}\n</rte>\n<trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk></gpx>`,
	`${HEAD}\n${points[0]}\n<rte>${points[1]}</rte><extensions><a:b xmlns:a="urn:x">1</a:b></extensions></gpx>`,
	`${HEAD.replace('1.1"', '1.0"')}<!-- made up --><wpt lat='47' lon='-38'><name><![CDATA[<b>]]></name></wpt></gpx>`
];

const TABLE_HEAD =
	'on,place,kind,hole,total_cm,clear_cm,white_cm,snow_cm,slush_cm,freeboard_cm,core,by,secondhand,remark';

export const READING_TABLES: readonly string[] = [
	`${TABLE_HEAD}\n2027-01-20,Middle,measured,1,31,,,10,,,sound,A,,'=1+1\n2027-01-20,Middle,measured,2,33,20,13,,0,2,,A,,\n2027-01-22,Inlet,atLeast,1,20,,,,,,,,yes,"two\nlines"\n2027-01-25,Narrows,wentThrough,,,,,,,,,,,\n`,
	'date;total_cm;remark\r\n2027-01-20;31,5;soft\r\n2027-01-27;35;\r\n',
	'date,reading,total_cm,qc\n2027-01-20,1,31,\n2027-01-20,2,99,spike\n'
];
