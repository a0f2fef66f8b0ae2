package site

import (
	"errors"
	"fmt"
	"path"
	"strings"
	"sync"

	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// ErrNoStudio is the error of building where there is no content/studio.toml.
var ErrNoStudio = errors.New("there is no " + studioFile + " here")

// shared is what the files that all patterns share say.
type shared struct {
	studio pattern.Studio
	faulty bool                     // studio.toml has an error: nothing can be published in its name
	tables func() manuscript.Tables // read when the first pattern has to be worked
	spoilt map[string]bool          // own tables with an error: what is worked from them is not published
}

// open reads what all patterns share, and looks over what there is.
func (b *build) open() (source.Findings, error) {
	var findings source.Findings
	b.digests = map[Look]Digest{{At: atProgram}: Digest(b.Program)}
	if err := b.openStudio(&findings); err != nil {
		return nil, err
	}
	b.openTables(&findings)
	b.openStitches(&findings)
	b.plan = b.survey()
	addresses := make([]string, len(b.plan.leaves))
	for i, l := range b.plan.leaves {
		addresses[i] = l.address
	}
	b.digests[Look{At: atAddresses}] = digestOfAll(addresses)
	return append(findings, b.plan.findings...), nil
}

func (b *build) openStudio(findings *source.Findings) error {
	var found source.Findings
	l := looks{build: b}
	file := l.text(studioFile, &found)
	if file == nil && len(found) == 0 {
		return ErrNoStudio
	}
	if file != nil {
		studio, more := manuscript.ReadStudio(file)
		b.studio, found = studio, append(found, more...)
	}
	b.faulty = found.Errors()
	// Results are named by what studio.toml says, so that a comment in it costs nothing.
	said := b.studio
	said.File = nil
	b.digests[Look{At: atStudio}] = DigestOf(fmt.Appendf(nil, "%t %#v", b.faulty, said))
	*findings = append(*findings, found...)
	return nil
}

func (b *build) openTables(findings *source.Findings) {
	var own []manuscript.SizeTable
	var all []string
	b.spoilt = map[string]bool{}
	for _, name := range b.list(sizesFolder, findings) {
		table, is := strings.CutSuffix(name, ".toml")
		if !is || hidden(name) {
			continue
		}
		var found source.Findings
		l := looks{build: b}
		file := l.text(path.Join(sizesFolder, name), &found)
		if file != nil {
			read, more := manuscript.ReadSizes(file)
			own, found = append(own, read), append(found, more...)
		}
		b.spoilt[table] = found.Errors()
		digest := l.list[0].Saw
		b.digests[Look{At: atTable, Name: table}] = digest
		all = append(all, table, string(digest))
		*findings = append(*findings, found...)
	}
	b.digests[Look{At: atTables}] = digestOfAll(all)
	b.tables = sync.OnceValue(func() manuscript.Tables { return manuscript.Published().With(own...) })
}

// openStitches reads the stitches that patterns share.
func (b *build) openStitches(findings *source.Findings) {
	var all []string
	for _, name := range b.list(stitchesFolder, findings) {
		if !strings.HasSuffix(name, ".toml") || hidden(name) {
			continue
		}
		l := looks{build: b}
		if file := l.text(path.Join(stitchesFolder, name), findings); file != nil {
			special, found := manuscript.ReadStitches(file)
			b.studio.Stitches, *findings = append(b.studio.Stitches, special...), append(*findings, found...)
			all = append(all, name, string(l.list[0].Saw))
		}
	}
	b.digests[Look{At: atStitches}] = digestOfAll(all)
}
