//go:build !shop

package shop

import "context"

// Here returns the engine: built now, since this program has none built in.
func Here(ctx context.Context) (*Engine, error) { return Build(ctx) }
