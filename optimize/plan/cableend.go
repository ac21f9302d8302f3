package plan

// KindCableEnd is the bill's kind for crimped cable ends, which have a price but no part of their own.
const KindCableEnd = "cable-end"

// KindConduitEnd is that for the ends of a conduit.
const KindConduitEnd = "conduit-end"

// IsEnd reports whether a kind is that of ends, which are named by their cable or conduit.
func IsEnd(kind string) bool { return kind == KindCableEnd || kind == KindConduitEnd }
