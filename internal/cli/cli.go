// Package cli is the command line of foundrow: it reads what was asked for, has the other packages do it, and says what came of
// it. Data go to standard output and talk to standard error, so that the one can be piped while the other is read.
//
// It holds no knowledge of patterns: what it prints was worked out elsewhere.
package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"slices"
	"strings"

	"golang.org/x/term"

	"foundrow/internal/proof"
	"foundrow/internal/source"
)

// The exit statuses.
const (
	fine     = 0 // no errors
	faulty   = 1 // errors were found in the studio
	couldNot = 2 // it could not run
)

// A command is one thing that foundrow does.
type command struct {
	name    string
	does    string // in the list of commands
	lesson  string // what help shows: usage, what it is for, examples; the options are put before the examples
	example string
	options func(*options)
	run     func(*call, options, []string) (status int, err error)
}

// commands lists what foundrow does, in the order of a designer's day.
func commands() []command {
	return []command{watchCommand(), publishCommand(), gradeCommand(), swatchCommand(), proofCommand(), explainCommand(), helpCommand(), versionCommand()}
}

// A call is one run of the program: where it prints, and how.
type call struct {
	out, talk io.Writer
	// Whether either may be coloured, and whether a line of talk may be written over.
	colour, colourTalk, live bool
}

// Main runs the command line and returns the exit status.
func Main(args []string, out, talk *os.File) int {
	// A run is short and makes much that is dropped at once: collecting it less often saves a third of the time. Near the
	// limit it is collected as often as it needs to be.
	debug.SetGCPercent(400)
	debug.SetMemoryLimit(256 << 20)
	plain := os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb"
	s := &call{
		out: out, talk: talk,
		colour:     !plain && term.IsTerminal(int(out.Fd())),
		colourTalk: !plain && term.IsTerminal(int(talk.Fd())),
		live:       term.IsTerminal(int(talk.Fd())) && os.Getenv("TERM") != "dumb",
	}
	status, err := s.run(args)
	var wrong usageError
	switch {
	case errors.As(err, &wrong):
		fmt.Fprintln(talk, "foundrow:", wrong.message)
		if wrong.fix != "" {
			fmt.Fprintln(talk, "  "+wrong.fix)
		}
	case err != nil:
		fmt.Fprintln(talk, "foundrow:", err)
	}
	return status
}

// usageError is a command line that asks for something that is not there.
type usageError struct{ message, fix string }

func (e usageError) Error() string { return e.message }

func (s *call) run(args []string) (int, error) {
	if len(args) == 0 || args[0] == "-h" || args[0] == "-help" || args[0] == "--help" {
		return helpCommand().run(s, options{}, nil)
	}
	if args[0] == "--version" {
		args[0] = "version"
	}
	c, err := find(args[0])
	if err != nil {
		return couldNot, err
	}
	o, words, err := parse(c, args[1:])
	switch {
	case errors.Is(err, errHelp):
		return helpCommand().run(s, options{}, []string{c.name})
	case err != nil:
		return couldNot, err
	}
	status, err := c.run(s, o, words)
	if err != nil {
		status = couldNot
	}
	return status, err
}

// find returns the command of a name.
func find(name string) (command, error) {
	var names []string
	for _, c := range commands() {
		if c.name == name {
			return c, nil
		}
		names = append(names, c.name)
	}
	wrong := usageError{"there is no command " + name, "the commands are " + source.List(names, "and")}
	if near := source.Nearest(name, names); near != "" {
		wrong.fix = "did you mean " + near + "?"
	}
	return command{}, wrong
}

// findings prints findings for people, with their files named from where the command was run.
func (s *call) findings(to io.Writer, found source.Findings, colour bool) {
	io.WriteString(to, proof.Hand{Colour: colour}.Print(found))
}

// statusOf returns the exit status that findings call for.
func statusOf(found source.Findings) int {
	if found.Errors() {
		return faulty
	}
	return fine
}

// fromHere returns findings whose files are named from where the command was run instead of from the studio's folder.
func fromHere(found source.Findings, studio string) source.Findings {
	if studio == "" || studio == "." {
		return found
	}
	found = slices.Clone(found)
	for i := range found {
		found[i].Place.File = strings.TrimSuffix(studio, "/") + "/" + found[i].Place.File
	}
	return found
}
