package plan

import "cartwright/catalog"

// Money is an amount in whole cents, the catalogue's.
type Money = catalog.Cents
