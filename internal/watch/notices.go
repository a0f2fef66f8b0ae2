package watch

import "path"

// notices say where something was noticed, by names as the studio's files have them. They say nothing of what it was: a tree that
// looks there finds that out.
type notices struct {
	all     bool // anything anywhere may have changed
	names   map[string]bool
	folders map[string]bool // those that the names lie in
}

func (n *notices) add(name string) {
	if n.names == nil {
		n.names, n.folders = map[string]bool{}, map[string]bool{}
	}
	n.names[name] = true
	n.folders[path.Dir(name)] = true
}

// join adds other notices.
func (n *notices) join(more notices) {
	n.all = n.all || more.all
	for name := range more.names {
		n.add(name)
	}
}

func (n notices) empty() bool { return !n.all && len(n.names) == 0 }

// reaches reports whether a file, or a folder above it, was noticed by its own name, and whether something close to it was, so
// that it is worth a glance.
func (n notices) reaches(name string) (named, near bool) {
	for at := name; at != "."; at = path.Dir(at) {
		if n.names[at] {
			return true, true
		}
	}
	return false, n.all || n.folders[path.Dir(name)]
}

// reachesFolder reports whether what a folder holds may have changed.
func (n notices) reachesFolder(folder string) bool {
	named, _ := n.reaches(folder)
	return named || n.all || n.folders[folder]
}
