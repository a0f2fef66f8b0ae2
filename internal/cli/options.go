package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"foundrow/internal/source"
)

// options are those of all commands; each command names the ones it takes.
type options struct {
	studio, into     string
	size             string
	measures, gauges []string
	readings         [swatchStates][]string // of a swatch
	pattern, gauge   string
	json, forget     bool
	sweep            bool
	taken            *flag.FlagSet
}

// errHelp says that help was asked for.
var errHelp = errors.New("help was asked for")

func (o *options) takeStudio() {
	o.taken.StringVar(&o.studio, "studio", "", "the studio's `folder`, which has content in it; the current one if left out")
}

func (o *options) takeJSON() {
	o.taken.BoolVar(&o.json, "json", false, "print for programs")
}

// each makes an option that may be given several times.
func (o *options) each(to *[]string, name, usage string) {
	o.taken.Func(name, usage, func(s string) error {
		*to = append(*to, s)
		return nil
	})
}

// optionsOf returns the options of a command, none of them given.
func optionsOf(c command) *options {
	o := &options{taken: flag.NewFlagSet(c.name, flag.ContinueOnError)}
	o.taken.SetOutput(io.Discard)
	if c.options != nil {
		c.options(o)
	}
	return o
}

// parse reads what follows a command: options and words, in any order. After "--" everything is a word.
func parse(c command, args []string) (options, []string, error) {
	o := optionsOf(c)
	var words []string
	for {
		if err := o.taken.Parse(args); err != nil {
			return *o, nil, o.wrong(c, err)
		}
		rest := o.taken.Args()
		if len(rest) == 0 {
			return *o, words, nil
		}
		if ended := len(args) - len(rest); ended > 0 && args[ended-1] == "--" {
			return *o, append(words, rest...), nil
		}
		words, args = append(words, rest[0]), rest[1:]
	}
}

// wrong says what is the matter with an option.
func (o *options) wrong(c command, err error) error {
	if errors.Is(err, flag.ErrHelp) {
		return errHelp
	}
	name, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: -")
	if !unknown {
		return usageError{strings.Replace(err.Error(), "flag", "option", 1), "see foundrow help " + c.name}
	}
	var names []string
	o.taken.VisitAll(func(f *flag.Flag) { names = append(names, "--"+f.Name) })
	e := usageError{fmt.Sprintf("%s has no option --%s", c.name, strings.TrimPrefix(name, "-")), "it has none"}
	if len(names) > 0 {
		e.fix = "its options are " + source.List(names, "and")
	}
	if near := source.Nearest("--"+strings.TrimPrefix(name, "-"), names); near != "" {
		e.fix = "did you mean " + near + "?"
	}
	return e
}

// usage lists the options of a command, a line or two each.
func (o *options) usage() string {
	var b strings.Builder
	o.taken.VisitAll(func(f *flag.Flag) {
		value, says := flag.UnquoteUsage(f)
		head := "--" + f.Name
		if value != "" {
			head += " " + strings.ToUpper(value)
		}
		fmt.Fprintf(&b, "  %-22s %s\n", head, says)
	})
	return b.String()
}
