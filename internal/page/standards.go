package page

import (
	"strconv"

	"foundrow/internal/measure"
)

// yarnWeights are the names of the standard yarn weights 0 to 7.
// Source: Craft Yarn Council's www.YarnStandards.com, Standard Yarn Weight System.
var yarnWeights = [...]string{"Lace", "Super Fine", "Fine", "Light", "Medium", "Bulky", "Super Bulky", "Jumbo"}

// standardsCredit is the line the Craft Yarn Council asks for where its tables are used.
const standardsCredit = "Source: Craft Yarn Council's www.YarnStandards.com"

// WeightName names a standard yarn weight with its number: "Light (3)". It is "" for what is not one.
func WeightName(weight int) string {
	if weight < 0 || weight >= len(yarnWeights) {
		return ""
	}
	return yarnWeights[weight] + " (" + strconv.Itoa(weight) + ")"
}

// hookLabels are the US labels of hooks by hundredths of a millimetre. A hook the list leaves without a label, or does not
// have, is printed by its millimetres alone; labels are never looked up the other way, for several hooks share one.
// Source: Craft Yarn Council's www.YarnStandards.com, Hooks and Needles.
var hookLabels = map[int]string{
	225: "B-1", 275: "C-2", 312: "D", 325: "D-3", 350: "E-4", 375: "F-5", 400: "G-6", 425: "G", 450: "7", 500: "H-8",
	525: "I", 550: "I-9", 575: "J", 600: "J-10", 650: "K-10.5", 800: "L-11", 900: "M/N-13", 1000: "N/P-15", 1150: "P-16",
	1500: "P/Q", 1575: "Q", 1600: "Q", 1900: "S", 2500: "T/U/X", 3000: "T/X",
}

// steelLabels are the US numbers of steel hooks, which are for thread. Only sizes that no ordinary hook has are here, and
// of these only the ones for which the list prints one number: makers' numbers differ.
// Source: Craft Yarn Council's www.YarnStandards.com, Steel Hook and Thread Sizes.
var steelLabels = map[int]string{
	60: "12", 85: "13", 95: "13", 105: "11", 110: "11", 115: "10", 130: "10", 160: "6", 165: "7", 170: "5", 180: "6", 190: "5", 210: "3",
	220: "2", 235: "1", 255: "0", 270: "00",
}

// hookSize words a hook, millimetres first: "4.5 mm (US 7)".
func hookSize(mm measure.Num) string {
	words := mm.Decimal(3) + " mm"
	hundredths, _ := mm.Mul(measure.Int(100)).Floor().Int()
	if label, listed := hookLabels[hundredths]; listed {
		return words + " (US " + label + ")"
	}
	if label, listed := steelLabels[hundredths]; listed {
		return words + " (US steel " + label + ")"
	}
	return words
}
