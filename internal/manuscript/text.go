package manuscript

import (
	"bytes"
	"strconv"
	"strings"
	"unicode/utf8"

	"foundrow/internal/source"
)

// Limit is the size in bytes of the largest text that is read. The longest pattern in print is a hundredth of it: what is larger
// is a photo or a film under the wrong name.
const Limit = 8 << 20

// CheckText makes a file of the bytes that were read from it, which have to be UTF-8 text of no more than Limit. A byte that is
// no text becomes a question mark, so that all other places stay where they are; a byte order mark is left off, as editors do
// not show it. A file that is too large is returned empty: whoever reads the disk need read no further than one byte past Limit.
func CheckText(name string, data []byte) (*source.File, source.Findings) {
	var fs source.Findings
	if len(data) > Limit {
		f := source.NewFile(name, "")
		fs.Report(f, source.Span{}, "file-too-large", "the file is larger than "+strconv.Itoa(Limit>>20)+" MB, the most that is read as text",
			"see that it is a text and not a picture or a film under another name")
		return f, fs
	}
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		f := source.NewFile(name, "")
		fs.Report(f, source.Span{}, "not-utf8", "the file is in UTF-16, and texts are read in UTF-8", `save it again with the encoding "UTF-8"`)
		return f, fs
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	bad := notText(data)
	if len(bad) == 0 {
		return source.NewFile(name, string(data)), nil
	}
	mended := bytes.Clone(data)
	for _, at := range bad {
		mended[at] = '?'
	}
	f := source.NewFile(name, string(mended))
	reportBytes(&fs, f, data, bad)
	return f, fs
}

// notText returns the offsets of the bytes that are not UTF-8 text.
func notText(data []byte) []int {
	var bad []int
	if utf8.Valid(data) && bytes.IndexByte(data, 0) < 0 {
		return nil
	}
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == 0 || r == utf8.RuneError && size == 1 {
			bad = append(bad, i)
		}
		i += size
	}
	return bad
}

// reportBytes adds one finding for the first of the bytes that are no text, which says how many follow.
func reportBytes(fs *source.Findings, f *source.File, data []byte, bad []int) {
	first := data[bad[0]]
	more := ""
	if n := len(bad) - 1; n > 0 {
		more = ", and " + strconv.Itoa(n) + " more after it"
	}
	at := source.Span{From: bad[0], To: bad[0] + 1}
	if first == 0 {
		fs.Report(f, at, "not-utf8", "a byte 0 stands here, which no text holds"+more, "write the line anew, or restore the file from a copy")
		return
	}
	fix := `save the file again with the encoding "UTF-8"`
	if first >= 0xa0 {
		fix += "; in the older Latin-1 this byte is " + string(rune(first))
	}
	fs.Report(f, at, "not-utf8", "the byte "+strings.ToUpper(strconv.FormatUint(uint64(first), 16))+" here is not UTF-8 text"+more, fix)
}
