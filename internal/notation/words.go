package notation

// A word is a word of the language that rows are written in, however it is spelled.
type word uint8

const (
	unknown word = iota
	wRow
	wRnd
	wNext
	wSame
	wThat
	wFirst
	wLast
	wEnd
	wEach
	wAll
	wAny
	wIn
	wOn
	wAt
	wOf
	wFrom
	wHook
	wTo
	wTill
	wUntil
	wThrough
	wAround
	wAcross
	wAlong
	wOver
	wUnder
	wBetween
	wBefore
	wAfter
	wBelow
	wUp
	wDown
	wSt
	wCh
	wSp
	wLoop
	wRing
	wRemaining
	wRemain
	wLeft
	wRight
	wRep
	wMore
	wAnother
	wTimes
	wOnce
	wTwice
	wThrice
	wTotal
	wTurn
	wTurning
	wJoin
	wJoining
	wFasten
	wOff
	wYarn
	wColour
	wSkip
	wSkipped
	wLeave
	wUnworked
	wInc
	wDec
	wIncreased
	wDecreased
	wMarker
	wMarked
	wPlace
	wMove
	wRemove
	wWork
	wWorking
	wWith
	wAnd
	wThen
	wOr
	wNot
	wDo
	wCount
	wCounting
	wAs
	wRS
	wWS
	wSide
	wFacing
	wTop
	wBase
	wCentre
	wCorner
	wBeg
	wTch
	wPost
	wFront
	wBack
	wLoops // blo, flo …
	wRowEnd
	wEdge
	wOnly
	wSizes
	wOther
	wEvenly
	wSpaced
	wPiece
	wMeasures
	wUnit // cm, inch …
	wAlt
	wEvery
	wPrev
	wHalf
	wStanding
	wTog
	wX
	wA
	wEnding
	wInstead
	wMake
	wMaking
	wNow
	wThis
	wBe
	wHave
	wYou
	wShould
	wThere
	wIt
	wFor
	wFoundation
	wPull
	wTight
	wDrop
	wChange
	wRejoin
	wCut
	wWhere
	wContinue
	wManner
	wPatt
	wSet
	wWithin
	wReversing
	wShaping
	wBoth
	wThickness
	wGroup
	wPair
	wMiddle
	wWithout
	wReach
	wUsing
	wStarting
	wDesired
	wSection
	wForm
	wOpposite
	wNumberWord
	wPlain
	wThroughout
	wWhich
	wLong
	wBeginning
	wBehind
	wClose
	wFree
	wStuff
	wAgain
	wExtra
	wAlso
	wDone
	wOmit
	wDropped
)

// spelled lists how each word is written. Words that stand for nothing of their own ("the", "your") are dropped while a line is
// scanned.
var spelled = []struct {
	word word
	as   string
}{
	{wRow, "row rows r"}, {wRnd, "rnd rnds round rounds rd rds"},
	{wNext, "next nxt foll following"}, {wSame, "same"}, {wThat, "that those these"}, {wThis, "this"}, {wFirst, "first"},
	{wLast, "last final"}, {wEnd, "end ends"}, {wEach, "each ea"}, {wEvery, "every"}, {wAll, "all"}, {wAny, "any"},
	{wIn, "in into inside"}, {wOn, "on onto"}, {wAt, "at"}, {wOf, "of"}, {wFrom, "from"}, {wHook, "hook"}, {wTo, "to"}, {wTill, "till til"},
	{wUntil, "until"}, {wThrough, "through thru"}, {wAround, "around"}, {wAcross, "across"}, {wAlong, "along"}, {wOver, "over"}, {wUnder, "under"},
	{wBetween, "between bet btw"}, {wBefore, "before"}, {wAfter, "after"}, {wBelow, "below"}, {wUp, "up"}, {wDown, "down"},
	{wSt, "st sts stitch stitches"}, {wCh, "ch chs chain chains"}, {wSp, "sp sps space spaces"}, {wLoop, "loop loops lp lps"},
	{wRing, "ring circle"}, {wRemaining, "rem remaining"}, {wRemain, "remain remains"}, {wLeft, "left"}, {wRight, "right"},
	{wRep, "rep repeat repeats repeating reps rept"}, {wMore, "more additional further"}, {wAnother, "another"}, {wTimes, "times time"}, {wOnce, "once"},
	{wTwice, "twice"}, {wThrice, "thrice"}, {wTotal, "total altogether"}, {wTurn, "turn"}, {wTurning, "turning"}, {wJoin, "join"},
	{wJoining, "joining join-st joined"}, {wFasten, "fasten finish"}, {wOff, "off"}, {wYarn, "yarn thread wool cotton"}, {wColour, "colour color col colours colors"},
	{wSkip, "sk skip miss skipping missing"}, {wSkipped, "skipped missed unused"}, {wLeave, "leave leaving"}, {wUnworked, "unworked"},
	{wInc, "inc increase increases increasing incs"}, {wDec, "dec decrease decreases decreasing decs"}, {wIncreased, "inc'd increased incd"}, {wDecreased, "dec'd decreased decd"},
	{wMarker, "marker markers m mkr"}, {wMarked, "marked"}, {wPlace, "place pm"}, {wMove, "move sm"}, {wRemove, "remove rm"},
	{wWork, "work"}, {wWorking, "working worked"}, {wWith, "with"}, {wAnd, "and"}, {wThen, "then"}, {wOr, "or"}, {wNot, "not"},
	{wDo, "do don't does doesn't"}, {wCount, "count counts counted"}, {wCounting, "counting incl including excluding"}, {wAs, "as"}, {wRS, "rs"}, {wWS, "ws"}, {wSide, "side sides"},
	{wFacing, "facing faces"}, {wTop, "top"}, {wBase, "base"}, {wCentre, "centre center"}, {wMiddle, "middle"}, {wCorner, "corner corners"},
	{wBeg, "beg"}, {wBeginning, "beginning start"}, {wTch, "tch t-ch turning-ch"}, {wPost, "post posts stem"}, {wFront, "front"}, {wBack, "back"},
	{wLoops, "blo flo bl fl blp flp bls fls tbl tfl bbo 3rdlo"}, {wRowEnd, "row-end row-ends"}, {wEdge, "edge"}, {wOnly, "only"}, {wSizes, "size sizes"},
	{wOther, "other others"}, {wOpposite, "opposite"}, {wEvenly, "evenly even"}, {wSpaced, "spaced"}, {wPiece, "piece work-piece"}, {wMeasures, "measures measure"},
	{wUnit, "cm mm inch inches ins"}, {wAlt, "alt alternate"}, {wPrev, "prev previous preceding"}, {wHalf, "half"},
	{wStanding, "standing"}, {wTog, "tog together"}, {wX, "x"}, {wA, "a an"}, {wEnding, "ending"}, {wInstead, "instead"}, {wMake, "make"}, {wMaking, "making"},
	{wNow, "now"}, {wBe, "be is are was"}, {wHave, "have has"}, {wYou, "you"}, {wShould, "should will"}, {wThere, "there"}, {wIt, "it"}, {wFor, "for"},
	{wStarting, "starting"}, {wFoundation, "foundation"}, {wPull, "pull draw drawing pulling bringing"}, {wTight, "tight closed tightly loosely"}, {wDrop, "drop carry"}, {wChange, "change changing switch"},
	{wRejoin, "rejoin re-join attach"}, {wCut, "cut break fo"}, {wWhere, "where"}, {wContinue, "cont continue"}, {wManner, "manner way"}, {wPatt, "patt pattern pat"},
	{wSet, "set established"}, {wWithin, "within"}, {wReversing, "reversing"}, {wShaping, "shaping"}, {wBoth, "both"}, {wThickness, "thicknesses layers thickness"},
	{wGroup, "group groups"}, {wPair, "pair pairs"}, {wWithout, "without"}, {wReach, "reach"}, {wUsing, "using"},
	{wDesired, "desired"}, {wSection, "section sections"}, {wForm, "form"}, {wPlain, "plain"}, {wThroughout, "throughout"}, {wWhich, "which"},
	{wLong, "long"}, {wBehind, "behind"}, {wClose, "close"}, {wFree, "free"}, {wAgain, "again"}, {wExtra, "extra"}, {wAlso, "also"},
	{wDone, "done"}, {wStuff, "stuff stuffing"}, {wDropped, "the your its"}, {wOmit, "omit omitting"},
	{wNumberWord, "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred"},
}
