// Package branch solves integer programs in Go alone and leaves a certificate for what it says: branch and bound over
// a bounded dual simplex. It is made for programs of some dozens to some hundreds of columns, and right on all.
//
// # How it searches
//
// The simplex keeps the whole table, rows by columns, and exchanges two variables at each pivot (tableau). For
// programs this small that is fast, and every figure that branching asks for can be read from it.
// Bounds may change at any time: the reduced costs stay right, and the dual simplex goes on from where it is. It
// chooses rows by Devex weights and lets boxed variables change sides on the way (I. Maros, Computational Techniques of
// the Simplex Method, 2003). After too many pivots without a gain it takes the first index, which cannot cycle
// (R. G. Bland, Mathematics of Operations Research 2, 1977). Every few hundred pivots, or where the point has come off
// the rows, the table is made afresh. Costs that fall without limit are left out until there is a point that keeps all
// bounds; then the primal simplex lowers them.
//
// The search goes down from the open node of the least bound until it comes to an end. Where to split is chosen by
// pseudo-costs; a column of which little is known is tried out first, for a few pivots on each side (T. Achterberg,
// T. Koch, A. Martin, Operations Research Letters 33, 2005). There are no cuts and no fixing by reduced costs: what
// they prove would not fit in a certificate of splits and multipliers, or only as a split for each.
//
// # What is proved
//
// Each leaf holds multipliers of the rows. They come from rounded arithmetic, and any multipliers of right signs give a
// valid bound (A. Neumaier, O. Shcherbina, Mathematical Programming 99, 2004), so what they prove is computed here from
// the program's own numbers, everything that rounding may have added taken off, the rows moved out as the checker moves
// them. A leaf that falls short is split on; where nothing is left to split it says what it proves. Multipliers are
// then rounded to as few digits as still prove it, which makes a certificate shorter.
//
// # Limits
//
// Work is counted in pivots and nodes and not in time, so that the same program gives the same answer everywhere; only
// the context may end a search at another place. First finds, of all points that tie, the one whose integers come
// first, which depends on nothing but the program.
package branch
