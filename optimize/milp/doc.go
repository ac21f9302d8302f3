// Package milp states linear programs with integers by named variables and rows, and solves them to a
// proof. It knows nothing of what the variables stand for.
//
//	minimise or maximise  c·x + c0
//	subject to            a·x <= b, a·x >= b or a·x = b    for each row
//	                      lo <= x <= hi, some x whole
//
// Left out are rows of two different sides, special ordered sets and semicontinuous variables.
//
// # What is believed
//
// Whatever an engine returns is a claim. A point is taken where proof.CheckPoint passes it: bounds kept exactly,
// integers whole, each row within 1e-9 of its largest term. That nothing is better by Options.Resolution, or that
// nothing is possible, is believed where proof.Check passes the certificate. Both work in exact arithmetic and share
// no code with an engine. What does not pass is noted in Solution.Retries, and the status says no more than was proved.
//
// # Engines
//
// Package branch, in Go, finds points and proves. Package lpsolve finds points only: it is asked first where
// CARTWRIGHT_ENGINE=lp_solve, for a few turns of counted work, and branch proves what it found or finds better. A point
// of its that misses the rows by rounding is mended: integers stay, the rest is solved for once more.
//
// An engine is given counted work and no time; only a context ends it by the clock. So the same model gives the same
// solution on every machine.
//
// # Against others
//
// Random models of thirteen shapes, up to 200 variables, are solved here, by glpsol and by cbc in TestRivals: 300 with
// every run, more with -milp.runs. Small ones are compared with trying every point (TestBruteForce), published ones with
// the optimum printed beside them (TestMIPLIB and others).
package milp
