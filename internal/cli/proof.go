package cli

import (
	"fmt"
	"slices"

	"foundrow/internal/proof"
	"foundrow/internal/source"
)

func proofCommand() command {
	return command{
		name: "proof",
		does: "read patterns as a technical editor does, and list what does not come out",
		lesson: `
usage: foundrow proof [PATTERN…] [--sweep] [--studio FOLDER] [--json]

Works each PATTERN in every size and prints what was found, the way compilers
do: the place, what is so and what was said, the name of the rule; below it the
words meant, and a way to mend it. Without a PATTERN the whole studio is read:
patterns that are not released too, pages, size tables and studio.toml.

An error cannot stand: the pattern is not published until it is mended. A query
is something to look at, and perhaps to keep.

With --sweep each PATTERN is tried too for makers who are in no table: bodies
between the sizes and one step beyond them, in every measurement under [own], and
tensions up to 15% tighter and looser than yours, stitches and rows apart. You
see for which of them every row comes out, and the smallest change for which one
does not. What a sweep finds is no error of the pattern.

PATTERN is the name of its folder, or the path of the folder or of a file in it.

Exit status: 0 when there are no errors, 1 when there are, 2 when it could not
run.
`,
		example: `
  foundrow proof
      everything in this studio
  foundrow proof millrace content/patterns/greel-hat/pattern.md
      two patterns, by name and by file
  foundrow proof millrace --sweep
      one pattern, in its sizes and for makers between and beyond them
`,
		options: func(o *options) {
			o.takeStudio()
			o.taken.BoolVar(&o.sweep, "sweep", false, "try makers between and beyond the sizes too")
			o.takeJSON()
		},
		run: runProof,
	}
}

func runProof(s *call, o options, words []string) (int, error) {
	d, err := openDesk(o, words)
	if err != nil {
		return couldNot, err
	}
	var slugs []string
	for _, word := range words {
		slug, err := d.slug(word)
		if err != nil {
			return couldNot, err
		}
		if !slices.Contains(slugs, slug) {
			slugs = append(slugs, slug)
		}
	}
	patterns, found := d.Proof(slugs)
	found = fromHere(found, d.studio)
	var swept []sweep
	if o.sweep {
		swept = sweeps(d, patterns)
	}
	switch {
	case o.json && o.sweep:
		if err := printSweeps(s.out, proof.New(patterns, found), swept); err != nil {
			return couldNot, err
		}
	case o.json:
		s.out.Write(proof.New(patterns, found).JSON())
	default:
		s.findings(s.out, found, s.colour)
		for _, one := range swept {
			fmt.Fprintln(s.out, one.print())
		}
	}
	fmt.Fprintln(s.talk, proofSummary(len(patterns), found))
	return statusOf(found), nil
}

func proofSummary(patterns int, found source.Findings) string {
	return proof.Number(patterns, "pattern", "patterns") + " read: " + proof.Count(found)
}
