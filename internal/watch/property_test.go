package watch

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"foundrow/internal/publish"
	"foundrow/internal/site"
	"foundrow/internal/testkit"
)

// A desk is a studio on disk that is edited at random, published, and previewed. Its texts are few, so that going back is common.
type desk struct {
	folder  string
	studio  *studio
	noticed notices
	touched map[string]bool // manuscripts that a reading of may be another now
	all     bool            // every one may
}

func (d *desk) on(name string) string { return filepath.Join(d.folder, filepath.FromSlash(name)) }

func (d *desk) write(t *rapid.T, name, text string) {
	for above := path.Dir(name); !d.there(above); above = path.Dir(above) {
		d.noticed.add(above) // a folder that is made is told of, too
	}
	if err := os.MkdirAll(filepath.Dir(d.on(name)), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(d.on(name), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	d.noticed.add(name)
}

func (d *desk) remove(t *rapid.T, name string) {
	if err := os.RemoveAll(d.on(name)); err != nil {
		t.Fatal(err)
	}
	d.noticed.add(name)
}

// rename renames what is there to where nothing is.
func (d *desk) rename(t *rapid.T, from, to string) {
	if !d.there(from) || d.there(to) {
		return
	}
	if err := os.Rename(d.on(from), d.on(to)); err != nil {
		t.Fatal(err)
	}
	d.noticed.add(from)
	d.noticed.add(to)
}

// edit does one thing to the studio that designers do.
func (d *desk) edit(t *rapid.T) {
	slugs := rapid.SampledFrom([]string{"scarf", "shawl", "stole"})
	slug, n := slugs.Draw(t, "slug"), rapid.IntRange(0, 3).Draw(t, "version")
	folder := "content/patterns/" + slug
	there := d.there(folder)
	text := strings.NewReplacer("Scarf", "The "+slug, "L = 62", fmt.Sprintf("L = %d", 62+2*(n/2)), "A scarf.", fmt.Sprintf("A scarf, %d. ![it](it.jpg) See [about](/about/).", n)).Replace(scarf)
	what := rapid.SampledFrom([]string{"write", "write", "write", "faulty", "draft", "picture", "remove", "rename", "page", "page", "no page", "rename page", "table", "style", "layout", "studio", "all away", "leave something"}).Draw(t, "what")
	switch what {
	case "write":
		d.write(t, folder+"/it.jpg", "a picture")
		d.write(t, folder+"/pattern.md", text)
	case "faulty":
		d.write(t, folder+"/pattern.md", strings.Replace(text, "tall = 12", "tall = \"unheard_of\"", 1))
	case "draft":
		d.write(t, folder+"/pattern.md", strings.Replace(text, "released = 2026-04-02\n", "", 1))
	case "picture":
		d.write(t, folder+"/it.jpg", fmt.Sprint("picture ", n))
	case "remove":
		d.remove(t, folder)
	case "rename":
		to := slugs.Draw(t, "to")
		d.rename(t, folder, "content/patterns/"+to)
		d.touched["patterns/"+to], d.all = true, true
	case "page":
		d.write(t, "content/pages/about.md", fmt.Sprintf("# About %d\n\nWords %d.\n", n/2, n))
		d.touched["pages/about"] = true
		d.all = true // links to it hold, or do not
	case "no page":
		d.remove(t, "content/pages/about.md")
		d.all = true
	case "rename page":
		d.rename(t, "content/pages/about.md", "content/pages/us.md")
		d.all = true
	case "table":
		d.write(t, "content/sizes/women.toml", fmt.Sprintf("source = \"measured\"\nsizes = [\"XS\", \"S\", \"M\", \"L\", \"XL\", \"2X\", \"3X\", \"4X\", \"5X\"]\n[body.bust]\ncm = [76, 86, 96, 106, 116, 126, 136, 146, %d]\n", 156+n))
		d.all = true
	case "style":
		d.write(t, "layouts/pattern/pattern.css", fmt.Sprintf("h1 { margin: %dpx }", n))
	case "layout":
		if n == 0 {
			d.write(t, "layouts/plain/plain.html", "{{define \"main\"}}{{if}}")
		} else {
			d.remove(t, "layouts")
		}
	case "studio":
		d.write(t, "content/studio.toml", strings.Replace(studioOf("")["content/studio.toml"], "Dunes", fmt.Sprint("Dunes ", n/2), 1)+fmt.Sprintf("# %d\n", n))
		d.all = true
	case "all away":
		d.rename(t, "content/patterns", "content/put-away")
		d.rename(t, "content/put-away", "content/patterns")
		d.all = true // what was looked at while it was away is another reading
	case "leave something":
		if there {
			d.write(t, folder+"/.pattern.md.swp", fmt.Sprint(n))
		}
	}
	d.touched["patterns/"+slug] = true
	if d.there(folder) != there {
		d.all = true // a link that leads nowhere is offered the nearest address, which may be another now
	}
}

func (d *desk) there(name string) bool {
	_, err := os.Lstat(d.on(name))
	return err == nil
}

// Whatever is done to a studio on disk, what is shown of it is what publishing it makes, byte for byte but for the band; and no
// manuscript is read that nothing was done to.
func TestShownIsPublished(t *testing.T) {
	t.Parallel()
	cache := t.TempDir()
	rapid.Check(t, func(rt *rapid.T) {
		folder, err := os.MkdirTemp(cache, "studio")
		if err != nil {
			t.Fatal(err)
		}
		defer os.RemoveAll(folder)
		testkit.WriteStudio(t, folder, studioOf(scarf))
		tree, err := openTree(folder)
		if err != nil {
			t.Fatal(err)
		}
		d := desk{folder: folder, studio: newStudio(tree, new(site.Memory)), touched: map[string]bool{}, all: true}
		for range rapid.IntRange(1, 5).Draw(rt, "saves") {
			for range rapid.IntRange(0, 3).Draw(rt, "edits") {
				d.edit(rt)
			}
			if rapid.Bool().Draw(rt, "look everywhere") {
				d.noticed = notices{all: true}
			}
			changed, _ := tree.look(d.noticed, true)
			if len(changed) > 0 || d.studio.now.Load() == nil {
				preview := d.studio.open("test", time.Now()).preview
				preview.Overview(nil)
				if read := preview.Work().Read; !d.all && int(read) > len(d.touched) {
					rt.Fatalf("%d manuscripts are read where %d were touched", read, len(d.touched))
				}
				d.touched, d.all = map[string]bool{}, false
			}
			d.compare(rt)
			d.noticed = notices{}
		}
	})
}

// compare publishes the studio and asks for everything that was published.
func (d *desk) compare(t *rapid.T) {
	m := d.studio.now.Load()
	report, _, err := publish.Run(publish.Order{Studio: d.folder})
	if err != nil {
		t.Fatal(err)
	}
	h := &host{studio: d.studio}
	for _, p := range report.Parts {
		stayed := false
		for _, file := range report.Stayed {
			stayed = stayed || strings.HasPrefix(file, "content/"+p.Name)
		}
		if stayed || m.preview.Blocked() {
			continue
		}
		for _, name := range p.Outputs {
			want, err := os.ReadFile(d.on("public/" + name))
			if err != nil {
				t.Fatal(err)
			}
			if got := d.asked(t, h, name); got != string(want) {
				t.Fatalf("%s is shown as\n%s\nand published as\n%s", name, got, want)
			}
		}
	}
}

// asked asks for an output as a browser would, and takes the band off it.
func (d *desk) asked(t *rapid.T, h *host, name string) string {
	if strings.HasSuffix(name, ".html") {
		data, _, found := h.page("/" + name)
		if !found {
			t.Fatalf("%s is published, and not shown", name)
		}
		page, band := parted(string(data))
		if !strings.HasPrefix(strings.TrimPrefix(band, "Not out yet "), "As saved at") {
			t.Fatalf("%s says %q", name, band)
		}
		return page
	}
	v, is := d.studio.show(name)
	if !is {
		t.Fatalf("%s is published, and not shown", name)
	}
	if v.From == "" {
		return string(v.Data)
	}
	data, _, err := d.studio.tree.Read(v.From, 1<<20)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
