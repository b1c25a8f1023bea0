/* What is told of a day: holes, their quantiles, bounds, means, ice-out. See time-ensemble.c. */
#include "readings.c"

#define LAYERS 6
#define SHARES 5
#define BOUNDS 3 /* of effective thickness at a spot and at the thinnest of five, of the whole */

static const double SHARE[SHARES] = {0.05, 0.1, 0.5, 0.9, 0.95};

/* Holes of a day, a member a value; the seventh is effective thickness at the thinnest of five spots. */
struct holes {
	double *clear_m, *white_m, *snow_m, *slush_m, *total_m, *effective_m, *thinnest_m;
};

struct told {
	double quantiles[LAYERS][SHARES];
	double bound_m[BOUNDS];
	double column[6], mean_m, sd_m, before_m;
	double *spots, *five_spots; /* sorted, kept to count members from */
};

static void drill(const struct ensemble *e, struct holes *h)
{
	const struct members *m = &e->members;
	for (int i = 0; i < m->count; i++) {
		double clear_m = m->clear_m[i], white_m = m->white_m[i], total_m = clear_m + white_m;
		double tape = total_m > 0 ? 0.01 / total_m * e->spots.tape[i] : 0;
		double scatter = hypot(0.035, 0.03) / (total_m + 0.1);
		double here = fmax(0, 1 + scatter * e->spots.ice[i] + tape);
		double sound_m = clear_m + 0.5 * white_m;
		double drift = fmax(0, 1 + 0.4 * e->spots.snow[i]);
		h->clear_m[i] = clear_m * here;
		h->white_m[i] = white_m * here;
		h->total_m[i] = total_m * here;
		h->effective_m[i] = sound_m * here;
		h->thinnest_m[i] = sound_m * fmax(0, 1 + scatter * e->spots.thinnest[i]);
		h->snow_m[i] = m->snow_m[i] * drift;
		h->slush_m[i] = m->slush_m[i] * drift;
	}
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

/* Values dealt out to as many even intervals: which each is in, and how many lie before each. */
struct dealt {
	int *interval, *start;
	char *is_wanted;
};

/* Returns 0, with nothing done, where all values are the same. */
static int deal(const double *values, int count, struct dealt *d)
{
	double low = values[0], high = values[0];
	for (int i = 1; i < count; i++) {
		low = values[i] < low ? values[i] : low;
		high = values[i] > high ? values[i] : high;
	}
	if (!(high > low)) return 0;
	double scale = (count - 1) / (high - low);
	memset(d->start, 0, (count + 1) * sizeof *d->start);
	for (int i = 0; i < count; i++) {
		d->interval[i] = (int)((values[i] - low) * scale);
		d->start[d->interval[i] + 1]++;
	}
	for (int k = 1; k <= count; k++) d->start[k] += d->start[k - 1];
	return 1;
}

static int interval_of(int rank, int count, const struct dealt *d)
{
	int low = 0, high = count;
	while (high - low > 1) {
		int middle = (low + high) / 2;
		if (d->start[middle] <= rank)
			low = middle;
		else
			high = middle;
	}
	return low;
}

static void put(double *sorted, const double *values, int count, struct dealt *d)
{
	for (int i = 0; i < count; i++)
		if (d->is_wanted[d->interval[i]]) sorted[d->start[d->interval[i]]++] = values[i];
}

/* Puts nearly sorted values in order. */
static void mend(double *values, int count)
{
	int moves = 0;
	for (int i = 1; i < count; i++) {
		double value = values[i];
		int at = i;
		for (; at > 0 && values[at - 1] > value; at--) values[at] = values[at - 1];
		values[at] = value;
		moves += i - at;
		if (moves > 8 * count) {
			qsort(values, count, sizeof(double), by_value);
			return;
		}
	}
}

static void sort_into(double *sorted, const double *values, int count, struct dealt *d)
{
	if (!deal(values, count, d)) {
		memcpy(sorted, values, count * sizeof(double));
		return;
	}
	memset(d->is_wanted, 1, count);
	put(sorted, values, count, d);
	mend(sorted, count);
}

/* The same, but in order only where the quantiles look. */
static void sort_around(double *sorted, const double *values, int count, struct dealt *d)
{
	int from[2 * SHARES], size[2 * SHARES], wanted = 0;
	if (!deal(values, count, d)) {
		memcpy(sorted, values, count * sizeof(double));
		return;
	}
	memset(d->is_wanted, 0, count);
	for (int q = 0; q < 2 * SHARES; q++) {
		int rank = (int)((count - 1) * SHARE[q / 2]) + q % 2;
		int k = interval_of(rank < count ? rank : count - 1, count, d);
		if (d->is_wanted[k]) continue;
		d->is_wanted[k] = 1;
		from[wanted] = d->start[k];
		size[wanted++] = d->start[k + 1] - d->start[k];
	}
	put(sorted, values, count, d);
	for (int k = 0; k < wanted; k++) mend(sorted + from[k], size[k]);
}

static double quantile(const double *sorted, int count, double share)
{
	double at = (count - 1) * share;
	int below = (int)at;
	double low = sorted[below], high = below + 1 < count ? sorted[below + 1] : low;
	return low + (at - below) * (high - low);
}

/* What one hole did to a bound: the bound without it, by how much it was off, and its height. */
struct bound_read {
	double before_m, off, hole_m;
};

/* What is kept of a bound: of the last rise, of what a thin hole capped, and holes read since that one. */
struct held {
	double raised_m, capped_m;
	int since_cap;
};

/* Holes that it takes to lift a cap. */
enum { LIFTS_CAP = 2 };

/* A thicker hole raises a bound only gradually, a thinner one caps it at once. */
static double held_back(double bound_m, const struct bound_read *read, struct held *held)
{
	if (read) {
		int counts = fabs(read->off) <= 3;
		double rise_m = fmax(0, bound_m - read->before_m);
		double fall_m = fmax(0, read->before_m - bound_m);
		held->raised_m = counts ? rise_m : held->raised_m + rise_m;
		held->since_cap += counts;
		double left_m = held->since_cap >= LIFTS_CAP ? 0 : fmax(0, held->capped_m - fall_m);
		double cap_m = read->off < 0 ? fmax(0, bound_m - held->raised_m - read->hole_m) : 0;
		int caps = cap_m > 0 && cap_m >= left_m;
		held->capped_m = caps ? cap_m : left_m;
		if (caps) held->since_cap = 0;
	} else if (bound_m <= 0)
		*held = (struct held){0};
	return fmax(0, bound_m - held->raised_m - held->capped_m);
}

static double weighted(const double *values, const double *weights, int count)
{
	double sum = 0, all = 0;
	for (int i = 0; i < count; i++) {
		sum += values[i] * weights[i];
		all += weights[i];
	}
	return all > 0 ? sum / all : 0;
}

static void mean_column(const struct members *m, double total_m, double snow_m, double *column)
{
	double clear_m = mean_of(m->clear_m, m->count), white_m = mean_of(m->white_m, m->count);
	double share = clear_m + white_m > 0 ? white_m / (clear_m + white_m) : 0;
	column[0] = snow_m;
	column[1] = weighted(m->density_kg_m3, m->snow_m, m->count);
	column[2] = mean_of(m->slush_m, m->count);
	column[3] = share * total_m;
	column[4] = (1 - share) * total_m;
	column[5] = weighted(m->liquid, m->clear_m, m->count);
}

static void site_spread(const struct members *m, double drifted_m, double *effective, struct told *t)
{
	double squares = 0;
	for (int i = 0; i < m->count; i++) effective[i] = m->clear_m[i] + 0.5 * m->white_m[i];
	t->mean_m = mean_of(effective, m->count);
	for (int i = 0; i < m->count; i++) {
		double gap = effective[i] - t->mean_m;
		squares += gap * gap;
	}
	t->sd_m = hypot(sqrt(squares / (m->count - 1)), drifted_m);
}

/* First day without ice after the thickest, a member a value; -1 while there is none. */
static void see_ice_out(const struct members *m, int day, double *thickest_m, double *opens_on)
{
	for (int i = 0; i < m->count; i++) {
		double ice_m = m->clear_m[i] + m->white_m[i];
		if (ice_m > 0 && ice_m >= thickest_m[i]) {
			thickest_m[i] = ice_m;
			opens_on[i] = -1;
		} else if (ice_m <= 0 && m->slush_m[i] <= 0 && thickest_m[i] > 0 && opens_on[i] < 0)
			opens_on[i] = day;
	}
}
