/*
 * The model's ensemble in C, for the speed comparison of the benchmark: the same draws, equations and
 * arrays as src/lib/model/ensemble for a site without events, futures and memory, whose days all
 * report a mean temperature, precipitation and snowfall, and whose readings are of one hole with whole
 * and white ice and snow. Sources and reasons stand there. Not used by the product.
 *
 * Standard input: days, latitude, elevation_m, members, seed, readings, runs; the parameters in the
 * order of struct parameters in cover.c; struct uncertain ten times; struct weather for each day;
 * struct reading for each reading.
 * Standard output, for each day and the one after the last: quantiles of clear, white, snow, slush,
 * total and effective thickness, three lower bounds, the mean column, mean and spread of the site; then
 * a line with the time of each run in nanoseconds.
 */
#define _POSIX_C_SOURCE 199309L
#include <stdio.h>
#include <time.h>

#include "told.c"

struct winter {
	int days, members, readings;
	double latitude, elevation_m;
	uint32_t seed;
	struct parameters parameters;
	struct uncertain uncertain[UNCERTAIN];
	struct weather *weather;
	struct reading *reading;
};

/* Arrays that a run works with, and how much of each bound is held back. */
struct desk {
	struct holes holes, before;
	double *sorted, *total_m, *scratch, *thickest_m, *opens_on;
	struct held held[BOUNDS];
	struct dealt dealt;
};

static double *allocated(size_t count)
{
	double *start = calloc(count, sizeof(double));
	if (!start) abort();
	return start;
}

static struct holes room(double *at, int count)
{
	return (struct holes){at,			  at + count,	  at + 2 * count, at + 3 * count,
						  at + 4 * count, at + 5 * count, at + 6 * count};
}

/* Bounds before and after, with what single readings raised held back. */
static void tell_bounds(struct desk *d, const double *const *sorted, const struct reading *read,
						double off, struct told *t, int count)
{
	const double *before[BOUNDS] = {d->before.effective_m, d->before.thinnest_m, d->before.total_m};
	for (int k = 0; k < BOUNDS; k++) {
		struct bound_read hole = {.off = off};
		if (read) {
			double white_m = read->white_share * read->total_m;
			hole.hole_m = k == 2 ? read->total_m : read->total_m - white_m / 2;
			sort_into(d->sorted, before[k], count, &d->dealt);
			hole.before_m = quantile(d->sorted, count, 0.1);
			if (k == 2) t->before_m = quantile(d->sorted, count, 0.5);
		}
		double bound_m = quantile(sorted[k], count, 0.1);
		t->bound_m[k] = held_back(bound_m, read ? &hole : NULL, &d->held[k]);
	}
	/* Ice counts as no more than there is of it. */
	for (int k = 0; k < 2; k++) t->bound_m[k] = fmin(t->bound_m[k], t->bound_m[2]);
}

static void tell(const struct ensemble *e, struct desk *d, const struct reading *read, double off,
				 double drifted_m, struct told *t)
{
	int count = e->members.count;
	const double *layers[LAYERS] = {d->holes.clear_m, d->holes.white_m, d->holes.snow_m,
									d->holes.slush_m, d->holes.total_m, d->holes.effective_m};
	double *sorted[LAYERS] = {d->sorted, d->sorted, d->sorted, d->sorted, d->total_m, t->spots};
	for (int k = 0; k < LAYERS; k++) {
		(k < LAYERS - 1 ? sort_around : sort_into)(sorted[k], layers[k], count, &d->dealt);
		for (int q = 0; q < SHARES; q++)
			t->quantiles[k][q] = quantile(sorted[k], count, SHARE[q]);
	}
	sort_into(t->five_spots, d->holes.thinnest_m, count, &d->dealt);
	const double *of_bounds[BOUNDS] = {t->spots, t->five_spots, d->total_m};
	tell_bounds(d, of_bounds, read, off, t, count);
	mean_column(&e->members, t->quantiles[4][2], t->quantiles[2][2], t->column);
	site_spread(&e->members, drifted_m, d->scratch, t);
}

static void run_days(const struct winter *w, struct ensemble *e, struct desk *d, struct told *told)
{
	int next = 0, since_read = 0;
	for (int day = 0; day <= w->days; day++) {
		struct told *t = &told[day];
		t->spots = allocated(2 * (size_t)w->members);
		t->five_spots = t->spots + w->members;
		double off = 0;
		const struct reading *read = NULL;
		if (next < w->readings && w->reading[next].day == day) {
			read = &w->reading[next++];
			drill(e, &d->before);
			off = recalibrate(e, read, day, d->scratch);
			since_read = 0;
		}
		drill(e, &d->holes);
		see_ice_out(&e->members, day, d->thickest_m, d->opens_on);
		tell(e, d, read, off, drift_m(since_read++), t);
		if (day == w->days) break;
		struct forcing f = day_forcing(&w->weather[day], w->latitude, w->elevation_m);
		pass_day(e, &f);
	}
}

static void run_ensemble(const struct winter *w, struct told *told)
{
	struct ensemble e = begin(w->members, w->seed, &w->parameters, w->uncertain);
	double *memory = allocated(24 * (size_t)w->members);
	struct desk d = {.holes = room(memory, w->members),
					 .before = room(memory + 7 * w->members, w->members),
					 .sorted = memory + 14 * w->members,
					 .scratch = memory + 15 * w->members,
					 .thickest_m = memory + 18 * w->members,
					 .opens_on = memory + 19 * w->members,
					 .total_m = memory + 23 * w->members,
					 .dealt = {.interval = (int *)(memory + 20 * w->members),
							   .start = (int *)(memory + 20 * w->members) + w->members,
							   .is_wanted = (char *)(memory + 22 * w->members)}};
	run_days(w, &e, &d, told);
	free(memory);
	free(e.memory);
}

static double now_ns(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec * 1e9 + t.tv_nsec;
}

static int read_doubles(void *to, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (scanf("%lf", (double *)to + i) != 1) return 0;
	return 1;
}

static int read_winter(struct winter *w, int *runs)
{
	double head[7];
	if (!read_doubles(head, 7)) return 0;
	*w = (struct winter){.days = head[0],	 .latitude = head[1], .elevation_m = head[2],
						 .members = head[3], .seed = head[4],	  .readings = head[5]};
	*runs = head[6];
	w->weather = malloc(w->days * sizeof *w->weather);
	w->reading = malloc((w->readings + 1) * sizeof *w->reading);
	return w->weather && w->reading &&
		   read_doubles(&w->parameters, sizeof w->parameters / sizeof(double)) &&
		   read_doubles(w->uncertain, UNCERTAIN * sizeof *w->uncertain / sizeof(double)) &&
		   read_doubles(w->weather, w->days * sizeof *w->weather / sizeof(double)) &&
		   read_doubles(w->reading, w->readings * sizeof *w->reading / sizeof(double));
}

static void print_day(const struct told *t)
{
	for (int k = 0; k < LAYERS; k++)
		for (int q = 0; q < SHARES; q++) printf("%.12g ", t->quantiles[k][q]);
	for (int k = 0; k < BOUNDS; k++) printf("%.12g ", t->bound_m[k]);
	for (int k = 0; k < 6; k++) printf("%.12g ", t->column[k]);
	printf("%.12g %.12g\n", t->mean_m, t->sd_m);
}

int main(void)
{
	struct winter w;
	int runs;
	if (!read_winter(&w, &runs)) return 1;
	struct told *told = calloc(w.days + 1, sizeof *told);
	double *times_ns = allocated(runs);
	if (!told) return 1;
	for (int run = 0; run < runs; run++) {
		for (int day = 0; day <= w.days; day++) free(told[day].spots);
		double start_ns = now_ns();
		run_ensemble(&w, told);
		times_ns[run] = now_ns() - start_ns;
	}
	for (int day = 0; day <= w.days; day++) print_day(&told[day]);
	for (int run = 0; run < runs; run++) printf("%.0f ", times_ns[run]);
	printf("\n");
	return 0;
}
