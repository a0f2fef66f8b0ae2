package cli

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"foundrow/internal/publish"
	"foundrow/internal/site"
	"foundrow/internal/source"
)

// A desk is the studio that a command works on, with where it lies.
type desk struct {
	*site.Desk
	studio string // as it is named from here: "" for the current folder
}

// openDesk opens the studio of the options, or the one that the first pattern is named in by its path.
func openDesk(o options, words []string) (desk, error) {
	studio := o.studio
	if studio == "" && len(words) > 0 {
		studio, _, _ = byPath(words[0])
	}
	if studio == "." {
		studio = ""
	}
	files, err := publish.Read(studio)
	if err != nil {
		return desk{}, err
	}
	d, err := site.Open(files)
	if errors.Is(err, site.ErrNoStudio) {
		where := studio
		if where == "" {
			where = "this folder"
		}
		return desk{}, usageError{
			"there is no studio in " + where + ": no content/studio.toml",
			"go to the folder that has content in it, or name it with --studio FOLDER",
		}
	}
	return desk{d, studio}, err
}

// slug returns the pattern that a word names: its slug, or the path of its folder or of a file in it.
func (d desk) slug(word string) (string, error) {
	known := d.Patterns()
	if slices.Contains(known, word) {
		return word, nil
	}
	name := word
	if studio, slug, is := byPath(word); is {
		if !sameFolder(studio, d.studio) {
			return "", usageError{word + " is in another studio", "name one studio at a time"}
		}
		if slices.Contains(known, slug) {
			return slug, nil
		}
		name = slug
	}
	wrong := usageError{"there is no pattern " + word, "the studio has no patterns yet"}
	if near := source.Nearest(name, known); near != "" {
		wrong.fix = "did you mean " + near + "?"
	} else if len(known) > 12 {
		wrong.fix = "the patterns are the folders in content/patterns"
	} else if len(known) > 0 {
		wrong.fix = "the patterns are " + source.List(known, "and")
	}
	return "", wrong
}

// byPath takes a path of the form STUDIO/content/patterns/SLUG, or of something in that folder, apart.
func byPath(word string) (studio, slug string, is bool) {
	if _, err := os.Stat(word); err != nil {
		return "", "", false
	}
	full, err := filepath.Abs(word)
	if err != nil {
		return "", "", false
	}
	parts := strings.Split(filepath.ToSlash(full), "/")
	for i := len(parts) - 3; i >= 0; i-- {
		if parts[i] == "content" && parts[i+1] == "patterns" {
			return publish.Shown(strings.Join(parts[:i], "/")), parts[i+2], true
		}
	}
	return "", "", false
}

func sameFolder(a, b string) bool {
	one, err1 := filepath.Abs(a)
	two, err2 := filepath.Abs(b)
	return err1 == nil && err2 == nil && one == two
}
