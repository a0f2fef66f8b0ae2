package site

import (
	"errors"
	"io/fs"

	"foundrow/internal/manuscript"
	"foundrow/internal/source"
)

// A Look is one thing that was looked at and what was seen there, Absent where nothing was.
type Look struct {
	At   At     `json:"at"`
	Name string `json:"name,omitzero"`
	Saw  Digest `json:"saw,omitzero"`
}

// At is the kind of thing looked at.
type At string

const (
	atProgram   At = "program"   // the program, with all that is built into it
	atFile      At = "file"      // a file of the studio
	atFolder    At = "folder"    // the names in a folder
	atStudio    At = "studio"    // what studio.toml says, not how it is written
	atTable     At = "table"     // a size table of the studio's own, Absent for a published one
	atStitches  At = "stitches"  // the stitches that patterns share
	atTables    At = "tables"    // all size tables of the studio's own
	atLayouts   At = "layouts"   // the files that replace parts of the layouts
	atAddress   At = "address"   // the part that has an address
	atAddresses At = "addresses" // all addresses, to offer the nearest
	atMenu      At = "menu"      // the plain pages by address and title
	atCards     At = "cards"     // what all patterns have to tell the catalogue
)

// unreadable is what is seen of a file that is there and cannot be read. It is no digest, so no result is ever named by it.
const unreadable Digest = "!"

// see returns what is seen now where a result was made from what was seen then.
func (b *build) see(at At, name string) Digest {
	switch at {
	case atFile:
		digest, err := b.Files.Digest(name)
		return seen(digest, err)
	case atFolder:
		names, err := b.Files.List(name)
		return seen(digestOfAll(names), err)
	case atAddress:
		return Digest(b.plan.addresses[name])
	}
	return b.digests[Look{At: at, Name: name}]
}

// seen is what a look at a file saw.
func seen(digest Digest, err error) Digest {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return Absent
	case err != nil:
		return unreadable
	}
	return digest
}

// looks is the list of what a result is made from, while it is being made.
type looks struct {
	build *build
	list  []Look
}

// at looks at something, once.
func (l *looks) at(at At, name string) Digest {
	for _, have := range l.list {
		if have.At == at && have.Name == name {
			return have.Saw
		}
	}
	saw := l.build.see(at, name)
	l.list = append(l.list, Look{at, name, saw})
	return saw
}

// text reads a text of the studio. It returns nil, with a finding unless the file is only absent, when there is nothing to go on.
func (l *looks) text(name string, findings *source.Findings) *source.File {
	data, digest, err := l.build.Files.Read(name, manuscript.Limit)
	l.list = append(l.list, Look{atFile, name, seen(digest, err)})
	if err != nil {
		if !errors.Is(err, fs.ErrNotExist) {
			*findings = append(*findings, unreadableFile(name, err))
		}
		return nil
	}
	file, found := manuscript.CheckText(name, data)
	*findings = append(*findings, found...)
	if file.Text == "" && found.Errors() {
		return nil
	}
	return file
}

// unreadableFile tells why a file that is there cannot be read.
func unreadableFile(name string, err error) source.Finding {
	f := source.Finding{Rule: "unreadable", Place: first(name), Fix: "see that the file can be read"}
	var at *fs.PathError
	switch {
	case errors.Is(err, ErrOutside):
		f.Rule, f.Message, f.Fix = "link-outside", "this is a link that leads out of the studio", "put the file itself here"
	case errors.As(err, &at):
		f.Message = "this cannot be read: " + at.Err.Error()
	default:
		f.Message = "this cannot be read: " + err.Error()
	}
	return f
}

// list returns the names in a folder of the studio.
func (b *build) list(folder string, findings *source.Findings) []string {
	names, err := b.Files.List(folder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		*findings = append(*findings, unreadableFile(folder, err))
	}
	return names
}
