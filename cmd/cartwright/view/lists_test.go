package view

import (
	"testing"

	"cartwright/catalog/source"
)

// someSources are of two rooms.
func someSources() Sources {
	return Sources{
		{Room: "wiring", Sources: []source.Source{
			{Kind: source.Table, Name: "ampacity of insulated conductors", Source: "NEC table 310.16 (2020, 2023)", Confidence: source.TwoTexts},
			{Kind: source.Rule, Name: "two poles open both hots of 240 V", Source: "NEC 210.4(B), 240.15(B)", Confidence: source.FromMemory},
		}},
		{Room: "chassis", Sources: []source.Source{
			{Kind: source.Practice, Name: "caster factor 1.25", Source: "none", Confidence: source.CommonNotRead},
		}},
	}
}

func TestListsInEveryFormat(t *testing.T) {
	sources := someSources()
	demos := Demos{{Name: "barn", Story: "A barn wants light | and heat."}, {Name: "boat", Story: "A boat wants neither."}}
	for _, c := range []struct {
		file   string
		answer Document
		format Format
	}{
		{"sources.txt", sources, Table},
		{"sources.md", sources, Markdown},
		{"sources.csv", sources, CSV},
		{"sources.json", sources, JSON},
		{"demos.txt", demos, Table},
		{"demos.md", demos, Markdown},
		{"demos.csv", demos, CSV},
		{"demos.json", demos, JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}
