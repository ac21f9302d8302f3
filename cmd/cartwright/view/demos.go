package view

// Demos shows the demos that come with the program.
type Demos []Demo

// Demo is a demo and what it is about, in a sentence.
type Demo struct {
	Name  string `json:"name"`
	Story string `json:"story"`
}

func (d Demos) sheet() sheet {
	t := &table{columns: []column{text("demo"), text("what it is about")}}
	for _, one := range d {
		t.row(one.Name, one.Story)
	}
	t.notes = []string{"The whole story: cartwright demo NAME. Its plans: cartwright plan NAME."}
	return sheet{{table: t}}
}

func (d Demos) record() any {
	return struct {
		Format  int    `json:"format"`
		Command string `json:"command"`
		Demos   []Demo `json:"demos"`
	}{jsonFormat, "demo", listed([]Demo(d))}
}

func (d Demos) records() [][]string {
	rows := [][]string{{"name", "story"}}
	for _, one := range d {
		rows = append(rows, []string{one.Name, one.Story})
	}
	return rows
}
