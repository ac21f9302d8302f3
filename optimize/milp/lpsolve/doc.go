// Package lpsolve is lp_solve 5.5 (LGPL-2.1) as an engine, found at run time where it is installed: the program is
// built without it and without C. Its points are welcome; what it claims besides is not believed.
//
// # What is known of the library
//
// All of it measured with 5.5.2.5, as Debian builds it:
//
//   - By default it guesses by how much the next point must be better, from the differences of costs, and the guess
//     can be too large. A solution limit other than 1 switches the guess off; a gap given by us takes its place.
//   - A gap is compared with the objective in the library's own scaling, by a factor that it does not tell. So rows
//     and objective are scaled here, by powers of 2, and the library's scaling is off where a gap is given.
//   - It sorts and rounds in place the rows it is handed, and takes the last of two entries of a column; a column out
//     of range makes it write where it must not. So rows are checked and handed over as copies.
//   - With a primal first phase it writes beyond the end of a list of its own. That phase is never used; 13,000 random
//     models under AddressSanitizer, under each setting in use, showed no other such write.
//   - It ends a branch unasked after 50 visits of a variable; here after 2,000, and then its claim counts nothing.
//   - Where it finds no way to mend a row that is off by less than 2e-7, as scaled, it calls it kept. So the row that
//     asks for a better point is scaled up until what matters in it is far larger.
//   - The values of a search without a point stay readable: the status is read before anything else.
package lpsolve
