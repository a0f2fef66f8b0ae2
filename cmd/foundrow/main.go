// Foundrow publishes crochet patterns. See package foundrow/internal/cli for what it does.
package main

import (
	"os"

	"foundrow/internal/cli"
)

func main() { os.Exit(cli.Main(os.Args[1:], os.Stdout, os.Stderr)) }
