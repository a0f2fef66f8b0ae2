package cli

import (
	"fmt"

	"foundrow/internal/proof"
)

func explainCommand() command {
	return command{
		name: "explain",
		does: "say what a rule means, with a wrong and a right example",
		lesson: `
usage: foundrow explain [RULE]

Explains the rule that stands in square brackets behind a finding: what it says,
why it matters, and how the lines look before and after. Without a RULE it lists
them all. The handbook has the same text.
`,
		example: `
  foundrow explain count-differs
      what a count that does not come out means
  foundrow explain
      every rule, with one sentence
`,
		run: func(s *call, _ options, words []string) (int, error) {
			if len(words) == 0 {
				for _, r := range proof.Rules() {
					fmt.Fprintf(s.out, "%-20s %s\n", r.Name, r.Sense)
				}
				return fine, nil
			}
			if len(words) > 1 {
				return couldNot, usageError{"explain takes one rule, not also " + words[1], ""}
			}
			rule, nearest, found := proof.Find(words[0])
			if !found {
				wrong := usageError{"there is no rule " + words[0], "foundrow explain lists them all"}
				if nearest != "" {
					wrong.fix = "did you mean " + nearest + "?"
				}
				return couldNot, wrong
			}
			fmt.Fprint(s.out, rule.Explain())
			return fine, nil
		},
	}
}
