//go:build !shop

package shop

import "context"

// BuiltIn reports whether the engine is there at once.
const BuiltIn = false

// Here returns the engine: built now, since this program has none built in.
func Here(ctx context.Context) (*Engine, error) { return Build(ctx) }
