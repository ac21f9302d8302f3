// Pack builds the planner for a browser into a folder, for a program that has it built in (-tags shop):
//
//	go run ./cmd/cartwright/page/shop/pack cmd/cartwright/page/shop/built
package main

import (
	"context"
	"fmt"
	"os"

	"cartwright/cmd/cartwright/page/shop"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: pack FOLDER")
		os.Exit(2)
	}
	e, err := shop.Build(context.Background())
	if err == nil {
		err = e.WriteTo(os.Args[1])
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}
