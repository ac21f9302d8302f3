package view

// sentences ends each text as a sentence; they begin with the id of a part.
func sentences(list []string) []string {
	return each(list, func(s string) string { return s + "." })
}

// noticed puts notices under the answer, the first section of a sheet.
func noticed(s sheet, notices []string) sheet {
	s[0].bullets = append(s[0].bullets, sentences(notices)...)
	return s
}
