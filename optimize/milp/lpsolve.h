// What the binding adds to the engine's own interface: a search that can be ended from outside, and a
// model that is loaded in one call.
#ifndef MILP_LPSOLVE_H
#define MILP_LPSOLVE_H

#include <stdatomic.h>
#include <lpsolve/lp_lib.h>

// milp_watch tells a running search to end: another thread sets stop, the deadline passes, or the work
// it was given is done. It lives in C memory, so that C keeps no pointer of Go's. One search uses it at a
// time.
typedef struct {
	atomic_int stop;
	long long deadline_ns; // of the monotonic clock; 0: none
	long long pivots;      // the search may make
	int spent;             // it has made them
} milp_watch;

// milp_init makes the process ready for searches in several threads. To be called once, before all else.
void milp_init(void);

// milp_new_watch returns a watch whose deadline is limit_ns from now, none for 0; NULL without memory.
// To be released by free.
milp_watch *milp_new_watch(long long limit_ns);

void milp_stop(milp_watch *w);

// milp_due reports whether searching must end.
int milp_due(milp_watch *w);

// milp_load returns a new lprec that holds a copy of a program by rows, to be released by delete_lp; NULL
// without memory. Row i has the entries begin[i] to begin[i+1] of colno and coef; columns count from 1 and
// ascend within a row; kind is LE, GE or EQ. Every index was checked before.
lprec *milp_load(int rows, int cols, const int *begin, const int *colno, const double *coef,
	const int *kind, const double *rhs, int objs, const int *objcol, const double *objcoef,
	const double *lo, const double *hi, const unsigned char *isint);

// milp_obey makes a search ask the watch every few pivots whether to go on, and gives it work.
void milp_obey(lprec *lp, milp_watch *w, long long pivots);

// milp_root returns the optimum of the relaxation that the last search began from, 1e30 where it found
// none.
double milp_root(lprec *lp);

#endif
