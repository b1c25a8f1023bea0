/*
 * Runs season.c and times it.
 *
 * Standard input: days, latitude, elevation_m; the parameters in the order of struct parameters in cover.c;
 * then day of the year, month, air_degC, precipitation_kg_m2, snowfall_kg_m2 for each day.
 * Standard output: clear_m white_m slush_m snow_m liquidFraction for each day and the one after
 * the last, then the median time of a winter in nanoseconds.
 */
#define _POSIX_C_SOURCE 199309L
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "season.c"

#define RUNS 501

static void run_winter(const struct weather *days, int count, double latitude, double elevation_m,
					   const struct parameters *p, struct site *states)
{
	struct site s = {0};
	for (int i = 0; i < count; i++) {
		states[i] = s;
		struct forcing day = day_forcing(&days[i], latitude, elevation_m);
		struct day_rates rates = day_rates(&day, p, STEPS);
		advance_day(&s, &day, &rates, p);
	}
	states[count] = s;
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

static double now_ns(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec * 1e9 + t.tv_nsec;
}

static int read_doubles(double *to, int count)
{
	for (int i = 0; i < count; i++)
		if (scanf("%lf", &to[i]) != 1) return 0;
	return 1;
}

int main(void)
{
	double head[3], times_ns[RUNS];
	struct parameters p;
	if (!read_doubles(head, 3) || !read_doubles((double *)&p, sizeof p / sizeof(double))) return 1;
	int count = (int)head[0];
	struct weather *days = malloc(count * sizeof *days);
	struct site *states = malloc((count + 1) * sizeof *states);
	if (!days || !states || !read_doubles((double *)days, count * 5)) return 1;
	for (int run = 0; run < RUNS; run++) {
		double start_ns = now_ns();
		run_winter(days, count, head[1], head[2], &p, states);
		times_ns[run] = now_ns() - start_ns;
	}
	for (int i = 0; i <= count; i++)
		printf("%.9f %.9f %.9f %.9f %.9f\n", states[i].clear_m, states[i].white_m,
			   states[i].slush_m, states[i].snow_m, states[i].liquid);
	qsort(times_ns, RUNS, sizeof *times_ns, by_value);
	printf("%.0f\n", times_ns[RUNS / 2]);
	return 0;
}
