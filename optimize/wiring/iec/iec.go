// Package iec holds the tables and rules of IEC 60364 (and IEC 60228 and 60269) that size a cable and its
// protection: one table, one rule, one function. The standards themselves were not at hand: each table
// says in how many independent texts the same values were found.
//
// Copper only, areas in mm2, two loaded conductors. Functions of a table return ok false where the table
// has no such row or an empty cell.
package iec

import "cartwright/catalog/source"

// Sources lists the tables and rules of this room.
func Sources() []source.Source {
	return []source.Source{
		AmpacitySource, InsulationSource, AmbientSource, GroupingSource, CircuitsSource, ResistanceSource,
		OverloadSource, FuseSource, SolarFuseSource, BreakerRatingsSource, FuseRatingsSource, ParallelSource, GroundSource,
	}
}
