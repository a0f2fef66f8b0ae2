package site

import (
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"io"
	"io/fs"
	"slices"
)

// Files are a studio's files, named as io/fs names them from the studio's folder: "content/patterns/millrace/pattern.md". They
// are asked by several goroutines at once. What is not there is fs.ErrNotExist; every other error is told to the designer.
type Files interface {
	// List returns the names in a folder in their order; those of folders end with a slash.
	List(folder string) ([]string, error)
	// Digest returns the digest of a file. It is apart from Read so that whoever keeps the files may answer from memory.
	Digest(name string) (Digest, error)
	// Read returns a file and the digest of it, or, of a file that is larger than the limit, its first limit+1 bytes.
	Read(name string, limit int64) ([]byte, Digest, error)
}

// ErrOutside is the error of a file that is a link to somewhere out of the studio.
var ErrOutside = errors.New("a link leads out of the studio")

// A Digest stands for content: equal digests mean equal bytes. The zero value is Absent.
type Digest string

// Absent is the digest of what is not there.
const Absent Digest = ""

// DigestOf returns the digest of some bytes: 128 bits of SHA-256, more than enough to tell the files of a studio apart.
func DigestOf(data []byte) Digest {
	sum := sha256.Sum256(data)
	return Digest(base64.RawURLEncoding.EncodeToString(sum[:16]))
}

// DigestFrom returns the digest of all that a reader gives.
func DigestFrom(r io.Reader) (Digest, error) {
	h := sha256.New()
	_, err := io.Copy(h, r)
	return Digest(base64.RawURLEncoding.EncodeToString(h.Sum(nil)[:16])), err
}

// digestOfAll returns one digest for several things in their order.
func digestOfAll(parts []string) Digest {
	size := 0
	for _, p := range parts {
		size += 8 + len(p)
	}
	all := make([]byte, 0, size)
	for _, p := range parts {
		for n, i := len(p), 0; i < 8; i++ {
			all = append(all, byte(n>>(8*i)))
		}
		all = append(all, p...)
	}
	return DigestOf(all)
}

// Plainly reads a studio from any file system, remembering nothing.
func Plainly(f fs.FS) Files { return plainly{f} }

type plainly struct{ fs.FS }

func (p plainly) List(folder string) ([]string, error) {
	entries, err := fs.ReadDir(p.FS, folder)
	if err != nil {
		return nil, err
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = e.Name()
		if e.IsDir() {
			names[i] += "/"
		}
	}
	slices.Sort(names)
	return names, nil
}

func (p plainly) Digest(name string) (Digest, error) {
	file, err := p.Open(name)
	if err != nil {
		return Absent, err
	}
	defer file.Close()
	return DigestFrom(file)
}

func (p plainly) Read(name string, limit int64) ([]byte, Digest, error) {
	file, err := p.Open(name)
	if err != nil {
		return nil, Absent, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, limit+1))
	if err != nil {
		return nil, Absent, err
	}
	return data, DigestOf(data), nil
}
