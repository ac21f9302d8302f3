// Package proof checks in exact rational arithmetic that no point of an integer program costs less than a bound.
package proof
