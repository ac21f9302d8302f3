// Package source says where a number comes from. Every room that uses a value table, a formula, a rule
// or a habit of the trade lists it as a Source, so that a reader can see what is confirmed, what is only
// remembered and what nobody published.
package source

// The kinds of thing that have a source.
const (
	Table    = "table"    // values copied from a publication
	Formula  = "formula"  // an equation
	Rule     = "rule"     // a clause of a code or standard
	Practice = "practice" // a habit of the trade, with or without a text behind it
)

// The usual wordings of how far a source may be trusted. Others are free to be more exact.
const (
	Definition    = "definition"
	TwoTexts      = "confirmed in two independent texts"
	ThreeTexts    = "confirmed in three independent texts"
	FourTexts     = "confirmed in four independent texts"
	OneText       = "confirmed in one text"
	FromMemory    = "from memory"
	CommonNotRead = "common practice, no source"
)

// Source is one table, formula, rule or practice in use.
type Source struct {
	Kind       string // Table, Formula, Rule or Practice
	Name       string // what it gives, for example "ampacity of insulated conductors"
	Source     string // publication, edition, clause, table or page
	Confidence string // how many independent texts agree, or that it is from memory
}

// Habit is a practice of the trade that nobody published, as far as is known.
func Habit(name string) Source {
	return Source{Kind: Practice, Name: name, Source: "none", Confidence: CommonNotRead}
}
