package cli

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cartwright/catalog"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// partsFor says of a line of an embedded catalogue file whether it is copied for a cart under some rules: not
// where it begins with the id of a part that can only serve under others.
func partsFor(rules scenarios.Rules) func(line string) bool {
	foreign := foreignParts(catalog.Embedded(), rules)
	return func(line string) bool {
		id, _, _ := strings.Cut(line, ",")
		return !foreign[id]
	}
}

// foreignParts returns the parts that cannot serve under a rule set: inverters and sundries of other volts, cables
// and conduits of other sizes, devices of ratings that are not standard there or of too few volts, and what is
// mounted otherwise than is usual. Of mounts and outlets: common practice, no source.
func foreignParts(c *catalog.Catalog, rules scenarios.Rules) map[string]bool {
	nec := rules == scenarios.NEC
	mount, roles := "plug-in", []string{"receptacle"}
	if nec {
		mount, roles = "rail", []string{"round-outlet", "residual-current"}
	}
	foreign := map[string]bool{}
	for _, v := range c.Inverters {
		foreign[v.ID] = (v.ACV == "230") == nec
	}
	for _, one := range c.Cables {
		foreign[one.ID] = strings.HasSuffix(string(one.Size), "mm2") == nec
	}
	for _, one := range c.Conduits {
		foreign[one.ID] = strings.HasSuffix(one.TradeSize, "mm") == nec
	}
	for _, d := range c.Devices {
		tooFew := !nec && d.MaxDCV == 0 && d.MaxACV < 230
		foreign[d.ID] = d.Mount == mount || tooFew || !ratings.Is(ratings.Standard(string(rules), d.Type), d.RatingA)
	}
	for _, s := range c.Sundries {
		other := s.Role == "inlet" && !ratings.Is(ratings.Standard(string(rules), "breaker"), s.RatingA)
		foreign[s.ID] = s.Mount == mount || slices.Contains(roles, s.Role) || other
	}
	return foreign
}

// keptLines returns the lines that are kept.
func keptLines(data []byte, keep func(line string) bool) []byte {
	var out []byte
	for line := range strings.Lines(string(data)) {
		if keep(line) {
			out = append(out, line...)
		}
	}
	return out
}

// startWorkbook writes the parts of a rule set as a workbook into a folder, and has its scenario name it.
func startWorkbook(dir string, rules scenarios.Rules) error {
	var parts bytes.Buffer
	if err := domestic(rules).WriteWorkbook(&parts); err != nil {
		return err
	}
	name := filepath.Join(dir, scenarios.FileName)
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	key := []byte("\ncatalog: " + partsFolder)
	text = bytes.Replace(text, key, append(key, filepath.Ext(partsWorkbook)...), 1)
	return errors.Join(os.WriteFile(name, text, 0o666), createFile(filepath.Join(dir, partsWorkbook), parts.Bytes()))
}

// domestic returns the embedded catalogue without the parts that cannot serve under a rule set.
func domestic(rules scenarios.Rules) *catalog.Catalog {
	c := catalog.Embedded()
	foreign := foreignParts(c, rules)
	c.Inverters = slices.DeleteFunc(c.Inverters, func(v catalog.Inverter) bool { return foreign[v.ID] })
	c.Cables = slices.DeleteFunc(c.Cables, func(one catalog.Cable) bool { return foreign[one.ID] })
	c.Conduits = slices.DeleteFunc(c.Conduits, func(one catalog.Conduit) bool { return foreign[one.ID] })
	c.Devices = slices.DeleteFunc(c.Devices, func(d catalog.Device) bool { return foreign[d.ID] })
	c.Sundries = slices.DeleteFunc(c.Sundries, func(s catalog.Sundry) bool { return foreign[s.ID] })
	c.Offers = slices.DeleteFunc(c.Offers, func(o catalog.Offer) bool { return foreign[o.PartID] })
	return c
}
