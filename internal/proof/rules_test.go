package proof

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"os"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/go/packages"

	"foundrow/internal/source"
)

// A use is a place where a rule is reported, and its weight where that can be seen there.
type use struct {
	at       token.Position
	severity source.Severity
	seen     bool
}

// reported finds the names of rules that the program reports: every constant that is handed to a parameter called rule, or put into
// a field called Rule or rule. Each comes with the places where it stands.
func reported(t *testing.T) map[string][]use {
	t.Helper()
	loaded, err := packages.Load(&packages.Config{Mode: packages.NeedName | packages.NeedCompiledGoFiles | packages.NeedImports | packages.NeedTypes | packages.NeedTypesSizes | packages.NeedSyntax | packages.NeedTypesInfo}, "foundrow/...")
	if err != nil {
		t.Fatal(err)
	}
	names := map[string][]use{}
	for _, p := range loaded {
		if len(p.Errors) > 0 {
			t.Errorf("%s does not compile: %v", p.PkgPath, p.Errors[0])
		}
		named := map[types.Object]bool{} // constants that are rules
		weigh := func(e ast.Expr) (source.Severity, bool) {
			if tv := p.TypesInfo.Types[e]; tv.Value != nil && strings.HasSuffix(tv.Type.String(), "source.Severity") {
				n, _ := constant.Int64Val(tv.Value)
				return source.Severity(n), true
			}
			return 0, false
		}
		take := func(called string, typ types.Type, e ast.Expr, weight use) {
			if !strings.EqualFold(called, "rule") || !types.Identical(typ.Underlying(), types.Typ[types.String]) {
				return
			}
			weight.at = p.Fset.Position(e.Pos())
			if v := p.TypesInfo.Types[e].Value; v != nil {
				names[constant.StringVal(v)] = append(names[constant.StringVal(v)], weight)
				if id, ok := e.(*ast.Ident); ok {
					named[p.TypesInfo.Uses[id]] = true
				}
				return
			}
			switch e := e.(type) {
			case *ast.Ident, *ast.SelectorExpr: // handed on
				return
			case *ast.BinaryExpr: // "missing-" and what is missing
				if v := p.TypesInfo.Types[e.X].Value; v != nil {
					takeAll(constant.StringVal(v), weight, names)
					return
				}
			}
			t.Errorf("%s: the name of a rule is put together here; write it out, so that it can be found", weight.at)
		}
		for _, f := range p.Syntax {
			ast.Inspect(f, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.CallExpr:
					s, ok := p.TypesInfo.TypeOf(n.Fun).(*types.Signature)
					if !ok {
						return true
					}
					weight := use{}
					switch called := strings.ToLower(nameOf(n.Fun)); called {
					case "report":
						weight.seen = true
					case "ask":
						weight.severity, weight.seen = source.Query, true
					}
					for _, arg := range n.Args {
						if severity, ok := weigh(arg); ok {
							weight.severity, weight.seen = severity, true
						}
					}
					for i, arg := range n.Args {
						if i < s.Params().Len() {
							take(s.Params().At(i).Name(), s.Params().At(i).Type(), arg, weight)
						}
					}
				case *ast.AssignStmt:
					weight := use{}
					for _, right := range n.Rhs {
						if severity, ok := weigh(right); ok {
							weight.severity, weight.seen = severity, true
						}
					}
					for i, left := range n.Lhs {
						if s, ok := left.(*ast.SelectorExpr); ok && len(n.Lhs) == len(n.Rhs) {
							take(s.Sel.Name, p.TypesInfo.TypeOf(s), n.Rhs[i], weight)
						}
					}
				case *ast.CompositeLit:
					takeFields(p.TypesInfo.TypeOf(n), n, weigh, take)
				}
				return true
			})
		}
		takeGroups(p, named, names)
	}
	return names
}

// takeGroups takes the constants of a group of which one is known to be a rule: a package may pass them on under other names.
func takeGroups(p *packages.Package, named map[types.Object]bool, names map[string][]use) {
	used := map[types.Object]token.Pos{}
	for id, obj := range p.TypesInfo.Uses {
		used[obj] = id.Pos()
	}
	for _, f := range p.Syntax {
		for _, d := range f.Decls {
			group, ok := d.(*ast.GenDecl)
			if !ok || group.Tok != token.CONST {
				continue
			}
			var all []*types.Const
			rules := false
			for _, spec := range group.Specs {
				for _, id := range spec.(*ast.ValueSpec).Names {
					if c, ok := p.TypesInfo.Defs[id].(*types.Const); ok && c.Val().Kind() == constant.String {
						all = append(all, c)
						rules = rules || named[c]
					}
				}
			}
			for _, c := range all {
				if at, ok := used[c]; ok && rules {
					name := constant.StringVal(c.Val())
					names[name] = append(names[name], use{at: p.Fset.Position(at)})
				}
			}
		}
	}
}

func nameOf(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

// takeAll takes every rule of the table that begins so; the beginning itself, which is none, where there is no such rule.
func takeAll(beginning string, weight use, names map[string][]use) {
	found := false
	for _, r := range Rules() {
		if strings.HasPrefix(r.Name, beginning) && names[r.Name] == nil {
			names[r.Name], found = append(names[r.Name], weight), true
		}
	}
	if !found {
		names[beginning] = append(names[beginning], weight)
	}
}

// takeFields takes the names that stand in a literal of a struct. A Finding says its weight beside, or is an error.
func takeFields(typ types.Type, lit *ast.CompositeLit, weigh func(ast.Expr) (source.Severity, bool), take func(string, types.Type, ast.Expr, use)) {
	if p, ok := typ.Underlying().(*types.Pointer); ok {
		typ = p.Elem()
	}
	s, ok := typ.Underlying().(*types.Struct)
	if !ok {
		return
	}
	weight := use{seen: strings.HasSuffix(typ.String(), "source.Finding")}
	for _, e := range lit.Elts {
		if kv, keyed := e.(*ast.KeyValueExpr); keyed {
			e = kv.Value
		}
		if severity, ok := weigh(e); ok {
			weight.severity, weight.seen = severity, true
		}
	}
	for i, e := range lit.Elts {
		if kv, keyed := e.(*ast.KeyValueExpr); keyed {
			key := kv.Key.(*ast.Ident).Name
			for j := range s.NumFields() {
				if s.Field(j).Name() == key {
					take(key, s.Field(j).Type(), kv.Value, weight)
				}
			}
		} else {
			take(s.Field(i).Name(), s.Field(i).Type(), e, weight)
		}
	}
}

// TestEveryRuleIsExplained holds that a rule which the program reports stands in the table, and that the table has no other.
func TestEveryRuleIsExplained(t *testing.T) {
	names := reported(t)
	for _, r := range editRules {
		names[r.Name] = append(names[r.Name], use{severity: r.Severity, seen: true})
	}
	known := map[string]bool{}
	for _, r := range Rules() {
		if known[r.Name] {
			t.Errorf("rule %s stands in the table twice", r.Name)
		}
		known[r.Name] = true
		if names[r.Name] == nil {
			t.Errorf("rule %s stands in the table and nothing reports it", r.Name)
		}
		if weighed := names[r.Name]; len(weighed) > 0 && !slices.ContainsFunc(weighed, func(u use) bool { return !u.seen }) && !slices.ContainsFunc(weighed, func(u use) bool { return u.seen && u.severity == r.Severity }) {
			t.Errorf("rule %s is a %s in the table and is never reported as one: %v", r.Name, r.Severity, weighed)
		}
	}
	for name, uses := range names {
		if !known[name] {
			t.Errorf("rule %s is reported and not in the table: %v", name, uses[0].at)
		}
	}
}

// TestRulesAreLessons holds that every rule says all that its section of the handbook needs.
func TestRulesAreLessons(t *testing.T) {
	for _, r := range Rules() {
		for part, said := range map[string]string{"sense": r.Sense, "reason": r.Why, "wrong example": r.Wrong, "right example": r.Right} {
			if said == "" {
				t.Errorf("rule %s has no %s", r.Name, part)
			}
		}
		for part, said := range map[string]string{"sense": r.Sense, "reason": r.Why} {
			if !strings.HasSuffix(said, ".") {
				t.Errorf("rule %s: the %s is no whole sentence: %q", r.Name, part, said)
			}
		}
		if r.Wrong == r.Right {
			t.Errorf("rule %s: what is wrong and what is right are the same", r.Name)
		}
		if strings.ToLower(r.Name) != r.Name || strings.ContainsAny(r.Name, " _.") {
			t.Errorf("rule %s: a name is short trade words in small letters, with hyphens", r.Name)
		}
		if r.Line < 0 || r.Line >= len(Checklist) || r.Line > 0 && Checklist[r.Line] == "" {
			t.Errorf("rule %s stands by line %d, which no program can check", r.Name, r.Line)
		}
	}
}

// TestMechanicalLinesCovered holds that every line of the checklist that a program can check has a rule.
func TestMechanicalLinesCovered(t *testing.T) {
	covered := LinesCovered()
	for line, sense := range Checklist {
		if sense != "" && !slices.Contains(covered, line) {
			t.Errorf("no rule for line %d of the checklist: %s", line, sense)
		}
	}
}

func TestFind(t *testing.T) {
	if r, _, found := Find("list-length"); !found || r.Line != 8 {
		t.Errorf("list-length is found as %+v", r)
	}
	if _, nearest, found := Find("list-lenght"); found || nearest != "list-length" {
		t.Errorf("list-lenght: found %v, did you mean %q", found, nearest)
	}
}

func TestExplain(t *testing.T) {
	r, _, _ := Find("off-tape")
	const want = `off-tape (query)

A length is written that no tape measure shows.

A maker measures in half centimetres or quarter inches; a finer figure looks exact and cannot be met.

Wrong:
    Work until the band measures 6.3 cm.

Right:
    Work until the band measures 6.5 cm.

On a technical editor's checklist: units: centimetres and inches say the same.
`
	if got := r.Explain(); got != want {
		t.Errorf("explained as\n%s", got)
	}
}

// TestHandbookPage holds that the handbook's page of rules is what the table says, below its opening.
func TestHandbookPage(t *testing.T) {
	const name = content + "/pages/rules.md"
	page, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	opening, _, found := strings.Cut(string(page), "\n## ")
	if !found {
		t.Fatalf("%s has no rules", name)
	}
	want := opening + "\n" + Handbook()
	if string(page) == want {
		return
	}
	if os.Getenv("UPDATE") == "" {
		t.Fatalf("%s is not what the table of rules says: run UPDATE=1 go test ./internal/proof", name)
	}
	if err := os.WriteFile(name, []byte(want), 0o666); err != nil {
		t.Fatal(err)
	}
}
