// Package nec holds the tables and rules of NFPA 70, the (United States) National Electrical Code, that
// size a cable and its protection: one table, one rule, one function. Numbering is that of the editions
// 2020 and 2023; the values of table 310.16 have not changed since 2011. The standard itself was not at hand:
// each table says in how many independent texts the same values were found.
//
// Functions of a table return ok false where the table has no such row or an empty cell.
package nec

import "cartwright/catalog/source"

// Sources lists the tables and rules of this room.
func Sources() []source.Source {
	return []source.Source{
		AmpacitySource, InsulationSource, AmbientSource, BundlingSource, ResistanceSource,
		TerminalSource, ContinuousSource, StandardSource, NextSizeSource, SmallSource,
		ParallelSource, GroundSource, EnlargedSource, DropSource,
	}
}
