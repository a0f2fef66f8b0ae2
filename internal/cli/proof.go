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
usage: foundrow proof [PATTERN…] [--studio FOLDER] [--json]

Works each PATTERN in every size and prints what was found, the way compilers
do: the place, what is so and what was said, the name of the rule; below it the
words meant, and a way to mend it. Without a PATTERN the whole studio is read:
patterns that are not released too, pages, size tables and studio.toml.

An error cannot stand: the pattern is not published until it is mended. A query
is something to look at, and perhaps to keep.

PATTERN is the name of its folder, or the path of the folder or of a file in it.

Exit status: 0 when there are no errors, 1 when there are, 2 when it could not
run.
`,
		example: `
  foundrow proof
      everything in this studio
  foundrow proof millrace content/patterns/greel-hat/pattern.md
      two patterns, by name and by file
`,
		options: func(o *options) {
			o.takeStudio()
			o.takeJSON()
		},
		run: runProof,
	}
}

func runProof(s *session, o options, words []string) (int, error) {
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
	if o.json {
		s.out.Write(proof.New(patterns, found).JSON())
	} else {
		s.findings(s.out, found, s.colour)
	}
	fmt.Fprintln(s.talk, proofSummary(len(patterns), found))
	return statusOf(found), nil
}

func proofSummary(patterns int, found source.Findings) string {
	return proof.Number(patterns, "pattern", "patterns") + " read: " + proof.Count(found)
}
