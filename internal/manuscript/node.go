package manuscript

import "foundrow/internal/source"

// A node is one value of a TOML text with its places and its order, both of which are lost where package toml decodes into maps.
type node struct {
	kind    kinds
	name    string      // the last part of its key
	key     source.Span // where that part is written
	span    source.Span // where the value is written; of a table under a header, the header
	text    source.Span // of a string: what stands between its quotes
	words   string      // of a string: what it says
	items   []*node     // of a list
	entries []*node     // of a table
	inline  bool        // a table or list written as a value
	escapes bool        // a string in which a backslash is read
	broken  bool        // the value could not be read: that has its finding, so it is neither missing nor wrong
}

// entry returns what stands under a name of a table, nil when nothing does.
func (n *node) entry(name string) *node {
	for _, e := range n.entries {
		if e.name == name {
			return e
		}
	}
	return nil
}

// add makes an entry of a table.
func (n *node) add(name string, key source.Span) *node {
	e := &node{name: name, key: key, span: key}
	n.entries = append(n.entries, e)
	return e
}

// last is the table that a key means where there is a list of them: the one that was opened last.
func (n *node) last() *node {
	if !n.inline && len(n.items) > 0 {
		return n.items[len(n.items)-1]
	}
	return n
}

// child returns the table of a name, made if it is not there yet.
func (n *node) child(part keyPart) *node {
	if e := n.entry(part.name); e != nil {
		return e.last()
	}
	e := n.add(part.name, part.span)
	e.kind = isTable
	return e
}
