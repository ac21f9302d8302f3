package picture

import (
	"strings"

	"cartwright/catalog/source"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/symbol"
)

// Sources lists where the symbols and colours of the drawings come from.
func Sources() []source.Source {
	list := []source.Source{{
		Kind: source.Practice, Name: "colours that colour-blind people tell apart, in drawings", Source: scene.PaletteSource, Confidence: source.OneText,
	}}
	list = append(list, source.Source{
		Kind: source.Rule, Name: "colours of conductors, in the cut list of a report", Source: "NEC 200.6, 250.119; IEC 60445", Confidence: source.FromMemory,
	}, source.Habit("black and red for live conductors under nec, red and black for + and -, in the cut list of a report"))
	for _, standard := range []symbol.Standard{symbol.IEC, symbol.IEEE} {
		var all []string
		for _, g := range symbol.All(standard) {
			all = append(all, g.Name+" "+g.Source)
		}
		list = append(list, source.Source{
			Kind: source.Rule, Name: "symbols of one-line diagrams, " + string(standard), Source: strings.Join(all, "; "), Confidence: source.FromMemory,
		})
	}
	return list
}
