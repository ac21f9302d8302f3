package plan

// KindCableEnd is the bill's kind for crimped cable ends, which have a price but no part of their own.
const KindCableEnd = "cable-end"

// KindConduitEnd is the bill's kind for the ends of a conduit.
const KindConduitEnd = "conduit-end"

// IsEnd reports whether a bill's kind is one of ends. The line of an end names its cable or conduit as the part.
func IsEnd(kind string) bool { return kind == KindCableEnd || kind == KindConduitEnd }
