package cli

import (
	"fmt"
	"runtime/debug"
	"strings"
)

func helpCommand() command {
	return command{
		name: "help",
		does: "explain a command",
		lesson: `
usage: foundrow help [COMMAND]

Explains a command, with its options and examples; without one, lists them all.
`,
		example: `
  foundrow help
  foundrow help grade
`,
		run: func(s *call, _ options, words []string) (int, error) {
			if len(words) == 0 {
				fmt.Fprint(s.out, overview())
				return fine, nil
			}
			c, err := find(words[0])
			if err != nil {
				return couldNot, err
			}
			fmt.Fprint(s.out, c.help())
			return fine, nil
		},
	}
}

func versionCommand() command {
	return command{
		name: "version",
		does: "say which foundrow this is",
		lesson: `
usage: foundrow version

Says which foundrow this is, and with which Go it was built. Put it into a
letter about something that went wrong.
`,
		example: `
  foundrow version
  foundrow version | tee about.txt
`,
		run: func(s *call, _ options, words []string) (int, error) {
			if len(words) > 0 {
				return couldNot, usageError{"version takes no words: " + words[0], ""}
			}
			version, with := "unknown", ""
			if info, ok := debug.ReadBuildInfo(); ok {
				version, with = info.Main.Version, info.GoVersion
			}
			fmt.Fprintf(s.out, "foundrow %s, %s\n", version, with)
			return fine, nil
		},
	}
}

func overview() string {
	var b strings.Builder
	b.WriteString(`foundrow publishes crochet patterns: one text a pattern, every size worked out.

`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-10s %s\n", c.name, c.does)
	}
	b.WriteString(`
foundrow help COMMAND explains one of them.
A studio is a folder with content/studio.toml in it; commands look for it in the
current folder unless --studio names another.
`)
	return b.String()
}

func (c command) help() string {
	var b strings.Builder
	b.WriteString(strings.TrimPrefix(c.lesson, "\n"))
	if options := optionsOf(c).usage(); options != "" {
		b.WriteString("\noptions:\n" + options)
	}
	b.WriteString("\nexamples:\n" + strings.TrimPrefix(c.example, "\n"))
	return b.String()
}
