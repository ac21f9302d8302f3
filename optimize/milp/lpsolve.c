#include <stdlib.h>
#include <string.h>
#include <time.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif
#include "lpsolve.h"

// The engine looks for a shared library libmyBLAS.so on the loader's path for every model it makes, in
// vain, at 40 us each; and it would run whatever it found. The linker wraps that call into this one
// (--wrap in the Go file); the engine then keeps its own routines, as it does when nothing is found.
MYBOOL __wrap_load_BLAS(char *libname) {
	(void)libname;
	return FALSE;
}

enum {
	KEEP_BYTES = 32 << 20, // of freed memory, before it goes back to the system
};

void milp_init(void) {
#ifdef __GLIBC__
	// Every model takes and frees a few arrays of 0.1 to 1 MB. Left alone, the C library maps and unmaps
	// them afresh each time, which costs a small model more than its solving.
	mallopt(M_MMAP_THRESHOLD, KEEP_BYTES);
	mallopt(M_TRIM_THRESHOLD, KEEP_BYTES);
#endif
	// The first lprec of a process fills in tables that all share; so it is made before threads are.
	lprec *lp = make_lp(0, 0);
	if (lp != NULL)
		delete_lp(lp);
}

static long long now_ns(void) {
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (long long)t.tv_sec * 1000000000LL + t.tv_nsec;
}

milp_watch *milp_new_watch(long long limit_ns) {
	milp_watch *w = calloc(1, sizeof *w);
	if (w != NULL && limit_ns > 0)
		w->deadline_ns = now_ns() + limit_ns;
	return w;
}

void milp_stop(milp_watch *w) { atomic_store(&w->stop, 1); }

int milp_due(milp_watch *w) {
	return atomic_load(&w->stop) || (w->deadline_ns != 0 && now_ns() >= w->deadline_ns);
}

static int __WINAPI asked(lprec *lp, void *handle) {
	milp_watch *w = handle;
	if (get_total_iter(lp) >= w->pivots)
		w->spent = 1;
	return w->spent || milp_due(w);
}

void milp_obey(lprec *lp, milp_watch *w, long long pivots) {
	w->pivots = pivots;
	w->spent = 0;
	put_abortfunc(lp, asked, w);
}

double milp_root(lprec *lp) { return lp->real_solution; }

// entries is a row on its way to the engine, which sorts and rounds what it is handed in place.
typedef struct {
	int *colno;
	double *coef;
} entries;

static void copy(entries *e, int count, const int *colno, const double *coef) {
	if (count == 0)
		return;
	memcpy(e->colno, colno, count * sizeof *colno);
	memcpy(e->coef, coef, count * sizeof *coef);
}

// load fills an lprec without rows. e has room for cols entries.
static int load(lprec *lp, entries *e, int rows, int cols, const int *begin, const int *colno,
		const double *coef, const int *kind, const double *rhs, int objs, const int *objcol,
		const double *objcoef, const double *lo, const double *hi, const unsigned char *isint) {
	set_use_names(lp, TRUE, FALSE);
	set_use_names(lp, FALSE, FALSE);
	if (!resize_lp(lp, rows, cols))
		return 0;
	set_add_rowmode(lp, TRUE);
	copy(e, objs, objcol, objcoef);
	if (objs > 0 && !set_obj_fnex(lp, objs, e->coef, e->colno))
		return 0;
	for (int i = 0; i < rows; i++) {
		int count = begin[i + 1] - begin[i];
		copy(e, count, colno + begin[i], coef + begin[i]);
		if (!add_constraintex(lp, count, e->coef, e->colno, kind[i], rhs[i]))
			return 0;
	}
	set_add_rowmode(lp, FALSE);
	for (int j = 0; j < cols; j++) {
		if (!set_bounds(lp, j + 1, lo[j], hi[j]))
			return 0;
		if (isint[j] && !set_int(lp, j + 1, TRUE))
			return 0;
	}
	return 1;
}

lprec *milp_load(int rows, int cols, const int *begin, const int *colno, const double *coef,
		const int *kind, const double *rhs, int objs, const int *objcol, const double *objcoef,
		const double *lo, const double *hi, const unsigned char *isint) {
	lprec *lp = make_lp(0, cols);
	entries e = {malloc((cols + 1) * sizeof *e.colno), malloc((cols + 1) * sizeof *e.coef)};
	int ok = lp != NULL && e.colno != NULL && e.coef != NULL;
	if (lp != NULL)
		set_verbose(lp, NEUTRAL);
	ok = ok && load(lp, &e, rows, cols, begin, colno, coef, kind, rhs, objs, objcol, objcoef, lo, hi, isint);
	free(e.colno);
	free(e.coef);
	if (!ok && lp != NULL) {
		delete_lp(lp);
		lp = NULL;
	}
	return lp;
}
