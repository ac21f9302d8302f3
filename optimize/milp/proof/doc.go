// Package proof checks in exact arithmetic that no point of an integer program costs less than a bound, or that
// it has no point at all. It knows no engine and believes none: a certificate may come from anywhere.
//
// # The theorem
//
// Take rows b_i <= a_i.x <= B_i, bounds l <= x <= u and a cost c.x. Give each row any multiplier y_i, and let
// s_i be b_i where y_i > 0 and B_i where y_i < 0. Then y_i (a_i.x) >= y_i s_i at every point, and so
//
//	c.x  =  y.(A x) + (c - y.A).x  >=  sum_i y_i s_i  +  sum_j min over [l_j, u_j] of (c_j - y.A_j) x_j
//
// Any y will do; a poor one gives a poor bound, never a wrong one. With c = 0, a right side above 0 shows that
// there is no point. The idea is Lagrange's; that it turns the inexact answer of a linear solver into a bound that
// is safe is from A. Neumaier and O. Shcherbina, "Safe bounds in linear and mixed-integer linear programming",
// Mathematical Programming 99 (2004), 283-296.
//
// A Tree splits an integer variable x into x <= k and x >= k + 1, which leaves out no whole number, and so on
// within either half. Each leaf has multipliers of its own, used with the bounds that hold there. Where all leaves
// hold, so does the bound for the program.
//
// # What counts as a point
//
// A point keeps its bounds exactly, its integers are whole, and each row may be off by Slack of the row's largest
// term, as solutions in double arithmetic are: the terms are |a_j x_j| and the side itself. A proof excludes
// every such point. Let N be what the negative terms of a row can come to within the bounds, and P the same of
// the positive ones. All terms of one sign are at most those of the other and |a.x| together; so where a row is
// off by v, its largest term is at most |side| + v + min(N, P), hence v <= Slack (|side| + v + min(N, P)). The
// sides are moved out by that v. A row whose N and P both have no limit is not used.
//
// # Bounds
//
// A sum that has to take a variable to infinity proves nothing. Where a variable has no bound on a side, one is
// derived from the rows, as moved, rounded outwards: if all other terms of a row are bounded, so is the one left.
// Where a bound on the cost is to be proved, points that cost no more are all that is looked at, so the cost
// serves as such a row, too.
//
// # Arithmetic
//
// Doubles are whole numbers times powers of 2. All of a program is multiplied by one power of 2 that makes its
// numbers whole, and the multipliers of a leaf by another, so everything is done in whole numbers of any length
// and nothing is rounded but what is said above. The checker is check.go and box.go; certificate.go is what it
// reads, flaw.go tells what is wrong, and point.go checks a point.
package proof
