package bench

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// each calls do for each of n things, as many at once as there are processors, until the context ends.
func each(ctx context.Context, n int, do func(i int)) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				do(i)
			}
		})
	}
	wait.Wait()
}
