package scenarios

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/quantity"
)

// amountText writes an amount of money, without decimals where there are no cents.
func amountText(c catalog.Cents) string {
	if c%100 == 0 {
		return strconv.FormatInt(int64(c/100), 10)
	}
	return fmt.Sprintf("%d.%02d", c/100, c%100)
}

// readAmount reads an amount of money; below 0 where there is none.
func readAmount(n *node) catalog.Cents {
	v, err := strconv.ParseFloat(n.value, 64)
	if n.kind != isNumber || err != nil {
		return -1
	}
	return catalog.CentsFrom(v)
}

// countText writes how much is owned: pieces, or a length in a unit.
func countText(h Holding, unit string) string {
	if !h.ByLength {
		return strconv.FormatFloat(h.Count, 'f', -1, 64)
	}
	return lengthText(h.Count, unit)
}

// newCountText writes how much there is of a part that is not in the file yet: a length in the file's unit or in
// metres, whichever is shorter.
func newCountText(h Holding, unit string) string {
	own, metric := countText(h, unit), countText(h, "m")
	if len(metric) < len(own) {
		return metric
	}
	return own
}

// lengthText writes a length in a unit with as few decimals as give it to a nanometre; where six are not enough, with
// four, rounded up, so that what is written is never less than what there is.
func lengthText(metres float64, unit string) string {
	const (
		exact  = 1e-9 // m
		most   = 6
		coarse = 4
	)
	one := lengthOf("1 " + unit)
	for decimals := 0; decimals <= most; decimals++ {
		number := strconv.FormatFloat(metres/one, 'f', decimals, 64)
		if text := number + " " + unit; math.Abs(lengthOf(text)-metres) <= exact {
			return text
		}
	}
	scale := math.Pow(10, coarse)
	return strconv.FormatFloat(math.Ceil(metres/one*scale)/scale, 'f', coarse, 64) + " " + unit
}

// lengthOf reads a length in metres, NaN where the text is none.
func lengthOf(text string) float64 {
	v, err := quantity.Parse(text, quantity.Length)
	if err != nil {
		return math.NaN()
	}
	return v
}

// unitOf returns the unit a length is written in, "" where it is none.
func unitOf(n *node) string {
	if n == nil || n.kind != isText || math.IsNaN(lengthOf(n.value)) {
		return ""
	}
	return lastUnit.FindString(strings.TrimSpace(n.value)) // of feet and inches the inches
}

// lastUnit matches the unit that a length ends with.
var lastUnit = regexp.MustCompile(`[A-Za-z]+$`)

// lengthUnit returns the unit that the file writes lengths of cable in: that of the last owned one, else that of the
// first run or circuit, else metres.
func lengthUnit(root *node) string {
	unit := "m"
	for _, key := range []string{"circuits", "runs"} {
		if e := root.child(key); e != nil && len(e.value.items) > 0 {
			if l := e.value.items[0].child("length"); l != nil && unitOf(l.value) != "" {
				unit = unitOf(l.value)
			}
		}
	}
	if e := root.child("have"); e != nil {
		for _, item := range e.value.items {
			if c := item.child("count"); c != nil && unitOf(c.value) != "" {
				unit = unitOf(c.value)
			}
		}
	}
	return unit
}

// plainWord matches text that is read as text without quotes, also within brackets.
var plainWord = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_./-]*$`)

// wordText writes a text, in quotes where it needs them or where all of the file is.
func wordText(word string, quoted bool) string {
	switch strings.ToLower(word) {
	case "true", "false", "null", "yes", "no", "on", "off", "y", "n":
		quoted = true
	}
	if quoted || !plainWord.MatchString(word) {
		return strconv.Quote(word)
	}
	return word
}

// inQuotesOf writes text with the quotes that a value stands in.
func inQuotesOf(n *node, text string) string {
	if n.source != "" && (n.source[0] == '"' || n.source[0] == '\'') {
		return string(n.source[0]) + text + string(n.source[0])
	}
	return text
}

// keyText writes a key of a mapping as its first key is: in quotes or not.
func (t *text) keyText(in *node, key string) string {
	if len(in.keys) > 0 && t.data[t.at(in.keys[0].pos)] == '"' {
		return strconv.Quote(key)
	}
	return key
}
