import { expect, test } from 'vitest';
import { askerOf } from '../../../src/routes/limits/asker.ts';

const asker = (address: string, hostname = 'localhost') => askerOf(() => address, hostname);

test.each(['127.0.0.1', '127.8.9.1', '::1', '::ffff:127.0.0.1'])(
	'%s is this machine',
	(address) => {
		expect(asker(address).isHere).toBe(true);
		// By the public name it is a proxy, for somebody whom it does not name.
		expect(asker(address, 'ice.example').isHere).toBe(false);
	}
);

test.each(['192.168.1.7', '10.0.0.1', '203.0.113.9', 'fe80::1', '2001:db8::1', '::ffff:10.0.0.1'])(
	'%s is elsewhere',
	(address) => {
		expect(asker(address).isHere).toBe(false);
	}
);

test('an address of IPv6 counts with its network, one of IPv4 by itself however it is written', () => {
	expect(asker('2001:db8:1:2::1').key).toBe(asker('2001:db8:1:2:ffff::7').key);
	expect(asker('2001:db8:1:2::1').key).not.toBe(asker('2001:db8:1:3::1').key);
	expect(asker('::ffff:203.0.113.9').key).toBe(asker('203.0.113.9').key);
	expect(asker('203.0.113.9').key).not.toBe(asker('203.0.113.8').key);
});

test.each(['', 'unknown', '__proto__', '203.0.113.9:5000', '<script>'])(
	'what is no address (%s) counts as one asker elsewhere',
	(address) => {
		expect(asker(address)).toEqual({ key: 'unknown', isHere: false });
	}
);

test('where the adapter cannot tell who asks, nobody is let through for that', () => {
	const throws = () => {
		throw new Error('Address header was specified but is absent');
	};
	expect(askerOf(throws, 'localhost')).toEqual({ key: 'unknown', isHere: false });
});
