/* The model's random numbers: xoshiro128**, normal quantiles (AS 241), stratified normal draws. */
#include <math.h>
#include <stdint.h>

struct random {
	uint32_t a, b, c, d;
};

static uint32_t rotated(uint32_t bits, int by) { return bits << by | bits >> (32 - by); }

static uint32_t next_bits(struct random *r)
{
	uint32_t result = rotated(r->b * 5, 7) * 9, shifted = r->b << 9;
	r->c ^= r->a;
	r->d ^= r->b;
	r->b ^= r->c;
	r->a ^= r->d;
	r->c ^= shifted;
	r->d = rotated(r->d, 11);
	return result;
}

/* Above 0 and below 1. */
static double draw(struct random *r) { return (next_bits(r) + 0.5) / 4294967296.0; }

static uint32_t fill(uint32_t *state)
{
	*state += 0x9e3779b9u;
	uint32_t mixed = *state;
	mixed = (mixed ^ mixed >> 16) * 0x85ebca6bu;
	mixed = (mixed ^ mixed >> 13) * 0xc2b2ae35u;
	return mixed ^ mixed >> 16;
}

static struct random seeded(uint32_t seed)
{
	struct random r;
	r.a = fill(&seed);
	r.b = fill(&seed);
	r.c = fill(&seed);
	r.d = fill(&seed);
	return r;
}

static const double CENTRE_ABOVE[8] = {
	2509.0809287301227, 33430.57558358813, 67265.7709270087,   45921.95393154987,
	13731.69376550946,	1971.5909503065513, 133.14166789178438, 3.3871328727963665};
static const double CENTRE_BELOW[8] = {
	5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597,
	5394.196021424751, 687.1870074920579,  42.31333070160091, 1};
static const double TAIL_ABOVE[8] = {
	0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
	3.6478483247632045,	   5.769497221460691,	 4.630337846156546,	 1.4234371107496835};
static const double TAIL_BELOW[8] = {
	1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
	0.6897673349851,	   1.6763848301838038,	  2.053191626637759,	1};
static const double FAR_ABOVE[8] = {
	2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
	0.29656057182850487,   1.7848265399172913,	  5.463784911164114,	 6.657904643501103};
static const double FAR_BELOW[8] = {
	2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
	0.014875361290850615,	0.1369298809227358,	  0.599832206555888,	 1};

static double polynomial(const double *coefficients, double x)
{
	double sum = 0;
	for (int i = 0; i < 8; i++) sum = sum * x + coefficients[i];
	return sum;
}

static double normal_quantile(double p)
{
	double q = p - 0.5;
	if (fabs(q) <= 0.425) {
		double x = 0.180625 - q * q;
		return q * (polynomial(CENTRE_ABOVE, x) / polynomial(CENTRE_BELOW, x));
	}
	double r = sqrt(-log(q < 0 ? p : 1 - p));
	double size = r <= 5 ? polynomial(TAIL_ABOVE, r - 1.6) / polynomial(TAIL_BELOW, r - 1.6)
						 : polynomial(FAR_ABOVE, r - 5) / polynomial(FAR_BELOW, r - 5);
	return q < 0 ? -size : size;
}

/* One from each of so many equally likely strata, in random order. */
static void normal_draws(double *draws, int count, struct random *r)
{
	for (int k = 0; k < count; k++) draws[k] = normal_quantile((k + draw(r)) / count);
	for (int i = count - 1; i > 0; i--) {
		int j = (int)(draw(r) * (i + 1));
		double kept = draws[i];
		draws[i] = draws[j];
		draws[j] = kept;
	}
}
