package plan

// KindCableEnd is the bill's kind for crimped cable ends, which have a price but no part of their own.
const KindCableEnd = "cable-end"
